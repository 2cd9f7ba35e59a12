package org.thumbseal.report;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.stream.Collectors;
import org.thumbseal.json.Printable;
import org.thumbseal.report.TextTable.Side;
import org.thumbseal.spares.Outlook;
import org.thumbseal.spares.Stock;

/** Spare parts as lines for a terminal. */
public final class StockText {
  private StockText() {}

  /** The table, then what is worth a word; each line ended by LF. */
  public static String of(Stock stock) {
    TextTable table =
        new TextTable(Side.LEFT, Side.RIGHT, Side.RIGHT, Side.LEFT, Side.RIGHT, Side.LEFT);
    table.row("part", "now", "min", "used a month", "lead time, at most", "order by");
    table.rule();
    stock.parts().forEach(part -> row(table, part));
    List<String> lines = new ArrayList<>(table.lines());
    lines.add("");
    stock.parts().forEach(part -> remarks(part, lines));
    StockWords.unclear(stock).ifPresent(lines::add);
    lines.add(Words.text("stock.terms"));
    return joined(lines);
  }

  private static void row(TextTable table, Outlook part) {
    table.row(
        Printable.line(part.line().part()),
        Integer.toString(part.stock().now()),
        Integer.toString(part.line().supply().minimum()),
        StockWords.use(part),
        StockWords.lead(part),
        StockWords.orderBy(part));
  }

  private static void remarks(Outlook part, List<String> lines) {
    List<String> said = new ArrayList<>(StockWords.remarks(part));
    if (part.state() == Outlook.State.BELOW_MINIMUM) {
      said.add(0, StockWords.state(part));
    }
    if (!said.isEmpty()) {
      lines.add(part.line().part() + ": " + String.join("; ", said));
    }
  }

  /** The order list: what, how many, by when, why. */
  public static String orders(Stock stock) {
    if (stock.orders().isEmpty()) {
      return Words.text("stock.nothing") + "\n";
    }
    return joined(stock.orders().stream().map(p -> order(stock, p)).toList());
  }

  private static String order(Stock stock, Outlook part) {
    return String.format(
        Locale.ROOT,
        "%6d x %s, by %s: %s",
        part.amount(),
        part.line().part(),
        StockWords.due(stock, part),
        StockWords.why(part));
  }

  private static String joined(List<String> lines) {
    return lines.stream().map(StockText::printable).collect(Collectors.joining("\n", "", "\n"));
  }

  private static String printable(String line) {
    return line.codePoints()
        .mapToObj(c -> Character.isISOControl(c) ? "?" : Character.toString(c))
        .collect(Collectors.joining());
  }
}
