package org.thumbseal.report;

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
      body.close().element("td", Words.text("stock.due", StockWords.due(stock, part)));
      body.open("td", "class", "box").element("span", "", "class", "tick").close();
      body.close().line();
    }
    body.close().close().line();
  }

  private static void parts(Markup body, Stock stock) {
    body.element("h2", Words.text("stock.now")).line();
    body.open("table").line().open("thead").open("tr");
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
    body.element("td", Integer.toString(part.stock().now()));
    body.element("td", Integer.toString(part.line().supply().minimum()));
    body.element("td", StockWords.use(part)).element("td", StockWords.lead(part));
    body.open("td").element("b", StockWords.orderBy(part));
    body.element("small", StockWords.state(part)).close().close().line();
  }
}
