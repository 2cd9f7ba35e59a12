package org.thumbseal.report;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.thumbseal.measurement.Budgeted;
import org.thumbseal.measurement.Contribution;
import org.thumbseal.measurement.Contribution.Distribution;
import org.thumbseal.measurement.Contribution.Input;
import org.thumbseal.quantity.Quantity;
import org.thumbseal.report.TextTable.Side;

/** The uncertainty budget of one quantity, in the columns of EA-4/02 and JCGM 100:2008 annex H. */
final class BudgetText {
  private final Budgeted quantity;
  private final String unit;

  private BudgetText(Budgeted quantity) {
    this.quantity = quantity;
    this.unit = quantity.unit();
  }

  static List<String> lines(Budgeted quantity) {
    BudgetText text = new BudgetText(quantity);
    List<String> lines = new ArrayList<>(text.table());
    lines.add("");
    lines.addAll(text.sources());
    return lines;
  }

  private List<String> table() {
    TextTable table =
        new TextTable(
            Side.LEFT, Side.RIGHT, Side.RIGHT, Side.LEFT, Side.RIGHT, Side.RIGHT, Side.RIGHT);
    table.row("input x", "estimate", "u(x)", "distribution", "c", "|c| u(x), " + unit, "share");
    table.rule();
    quantity.budget().forEach(line -> row(table, line));
    table.rule();
    table.row("u", "", "", "", "", aligned(quantity.standardUncertainty()), "100.0 %");
    String k = "k = " + number(Quantity.COVERAGE_FACTOR);
    table.row("U = k u", "", "", "", k, aligned(quantity.quantity().expandedUncertainty()), "");
    return table.lines();
  }

  private void row(TextTable table, Contribution line) {
    Input input = line.input();
    String of = line.inputUnit(unit);
    table.row(
        line.name(),
        with(estimate(input), of),
        with(number(input.standardUncertainty()), of),
        input.distribution().code(),
        with(number(line.sensitivity()), line.sensitivityUnit(unit)),
        aligned(line.standardUncertainty()),
        format("%.1f %%", 100 * share(line)));
  }

  /** Decimal places that give the combined uncertainty four significant digits. */
  private String aligned(double value) {
    double u = quantity.standardUncertainty();
    int places = u > 0 ? 3 - (int) Math.floor(Math.log10(u)) : 4;
    return format("%." + Math.min(9, Math.max(0, places)) + "f", value);
  }

  private double share(Contribution line) {
    double share = line.standardUncertainty() / quantity.standardUncertainty();
    return Double.isFinite(share) ? share * share : 0;
  }

  private List<String> sources() {
    int widest = quantity.budget().stream().mapToInt(c -> c.name().length()).max().orElse(0);
    return quantity.budget().stream()
        .flatMap(
            line -> {
              String space = " ".repeat(widest - line.name().length());
              return Paragraph.lines("    " + line.name() + space + "   ", source(line)).stream();
            })
        .toList();
  }

  private String source(Contribution line) {
    Input input = line.input();
    return input.distribution() == Distribution.NORMAL
        ? line.source()
        : line.source()
            + "; half width "
            + with(number(input.spread()), line.inputUnit(unit))
            + " over root "
            + Math.round(input.distribution().divisor() * input.distribution().divisor());
  }

  /** As many decimal places as its standard uncertainty needs to show, and two at least. */
  private static String estimate(Input input) {
    if (input.estimate() == 0) {
      return "0";
    }
    double u = input.standardUncertainty();
    int needed = u > 0 ? 1 - (int) Math.floor(Math.log10(u)) : 2;
    return format("%." + Math.min(9, Math.max(2, needed)) + "f", input.estimate());
  }

  /** Four significant digits. */
  static String number(double value) {
    if (value == 0) {
      return "0";
    }
    return value == Math.rint(value) && Math.abs(value) < 1_000
        ? format("%.0f", value)
        : format("%.4g", value);
  }

  static String with(String number, String unit) {
    return unit.equals("1") ? number : number + " " + unit;
  }

  private static String format(String format, Object... values) {
    return String.format(Locale.ROOT, format, values);
  }
}
