package org.thumbseal.report;

import java.time.LocalDate;
import java.time.temporal.ChronoUnit;
import org.thumbseal.spares.Outlook;
import org.thumbseal.spares.Stock;

/** Spare parts as a page to print: how each stands, and the order with a box to tick. */
public final class StockPage {
  private StockPage() {}

  /** The page, complete in itself. */
  public static String of(Stock stock) {
    String title = Words.text("stock.title", stock.today());
    Markup body = new Markup().open("main").element("h1", title).line();
    orders(body, stock);
    parts(body, stock);
    StockWords.unclear(stock).ifPresent(text -> body.element("p", text).line());
    body.element("p", Words.text("stock.terms"), "class", "caution").close().line();
    return PageFrame.page(
        new PageFrame.Head(title, "spare parts", Styles.text("stock.css"), ""), body);
  }

  private static void orders(Markup body, Stock stock) {
    body.element("h2", Words.text("stock.order")).line();
    if (stock.orders().isEmpty()) {
      body.element("p", Words.text("stock.nothing")).line();
      return;
    }
    body.open("table", "class", "orders").line().open("tbody").line();
    for (Outlook part : stock.orders()) {
      body.open("tr").open("td", "class", "number");
      body.element("b", Integer.toString(part.amount())).close();
      body.open("td").element("b", part.line().part()).element("small", StockWords.why(part));
      body.close();
      due(body, stock, StockWords.due(stock, part));
      body.open("td", "class", "box").element("span", "", "class", "tick").close();
      body.close().line();
    }
    body.close().close().line();
  }

  private static void parts(Markup body, Stock stock) {
    body.element("h2", Words.text("stock.now")).line();
    body.open("table", "class", "parts").line().open("thead").open("tr");
    for (String key : new String[] {"part", "now", "minimum", "use", "lead", "by"}) {
      body.element("th", Words.text("stock." + key), "scope", "col");
    }
    body.close().close().line().open("tbody").line();
    stock.parts().forEach(part -> part(body, part));
    body.close().close().line();
  }

  private static void part(Markup body, Outlook part) {
    body.open("tr", "class", StockWords.code(part.state()));
    body.open("td").element("b", part.line().part());
    StockWords.remarks(part).forEach(text -> body.element("small", text));
    body.close();
    named(body, "now", Integer.toString(part.stock().now()));
    named(body, "minimum", Integer.toString(part.line().supply().minimum()));
    named(body, "use", StockWords.use(part));
    named(body, "lead", StockWords.lead(part));
    body.open("td", "class", "by", "data-name", Words.text("stock.by"));
    body.element("b", StockWords.orderBy(part));
    if (!StockWords.state(part).equals(StockWords.orderBy(part))) {
      body.element("small", StockWords.state(part));
    }
    body.close().close().line();
  }

  /** With the name of its column, for screens too narrow for columns. */
  private static void named(Markup body, String key, String text) {
    body.element("td", text, "data-name", Words.text("stock." + key));
  }

  /** A day that is over says for how long. */
  private static void due(Markup body, Stock stock, LocalDate by) {
    body.open("td", "class", "by").text(Words.text("stock.due", by));
    long late = ChronoUnit.DAYS.between(by, stock.today());
    if (late > 0) {
      body.element("small", Words.text("stock.late", late));
    }
    body.close();
  }
}
