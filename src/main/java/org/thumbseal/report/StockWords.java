package org.thumbseal.report;

import java.time.LocalDate;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.TreeMap;
import java.util.stream.Collectors;
import org.thumbseal.spares.Demand;
import org.thumbseal.spares.Outlook;
import org.thumbseal.spares.Stock;
import org.thumbseal.spares.Use;

/** How it stands with a part, in words. */
final class StockWords {
  private StockWords() {}

  static String code(Outlook.State state) {
    return state.name().toLowerCase(Locale.ROOT).replace('_', '-');
  }

  static String state(Outlook part) {
    return Words.text("stock.state." + code(part.state()));
  }

  /** Use a month with its interval. */
  static String use(Outlook part) {
    return part.demand().map(StockWords::use).orElse(Words.text("stock.unknown"));
  }

  private static String use(Demand demand) {
    String range =
        demand
            .interval()
            .map(i -> String.format(Locale.ROOT, "%.1f to %.1f", i.low(), i.high()))
            .orElse(Words.text("stock.said"));
    return String.format(Locale.ROOT, "%.1f (%s)", demand.perMonth(), range);
  }

  static String lead(Outlook part) {
    OptionalInt use = part.leadUse();
    String most = use.isPresent() ? Integer.toString(use.getAsInt()) : "-";
    return most + " / " + Words.text("stock.days", part.line().supply().leadDays());
  }

  static String orderBy(Outlook part) {
    if (part.isPressing() && part.amount() > 0) {
      return Words.text("stock.state.order-now");
    }
    String none = Words.text(part.demand().isPresent() ? "stock.later" : "stock.unknown");
    return part.orderBy().map(Object::toString).orElse(none);
  }

  /** By when to order what is to be ordered: today, or a day that is over. */
  static LocalDate due(Stock stock, Outlook part) {
    return part.orderBy().filter(d -> d.isBefore(stock.today())).orElse(stock.today());
  }

  /** Why it is to be ordered. */
  static String why(Outlook part) {
    int now = part.stock().now();
    int minimum = part.line().supply().minimum();
    if (part.state() == Outlook.State.BELOW_MINIMUM) {
      return Words.text("stock.why.below-minimum", now, minimum);
    }
    OptionalInt use = part.leadUse();
    int lead = part.line().supply().leadDays();
    String most = use.isPresent() ? Integer.toString(use.getAsInt()) : "-";
    return Words.text(
        "stock.why.order-now", now, part.line().supply().onOrder(), most, lead, minimum);
  }

  /** What else there is to know about what is left. */
  static List<String> remarks(Outlook part) {
    int onOrder = part.line().supply().onOrder();
    return java.util.stream.Stream.of(
            onOrder > 0 ? Words.text("stock.on-order", onOrder) : "",
            part.stock().miscounted() ? Words.text("stock.miscounted") : "")
        .filter(s -> !s.isEmpty())
        .toList();
  }

  /** Uses that were counted for no part; empty where there are none. */
  static Optional<String> unclear(Stock stock) {
    TreeMap<String, Long> counts =
        stock.unclear().stream()
            .collect(Collectors.groupingBy(StockWords::name, TreeMap::new, Collectors.counting()));
    String list =
        counts.entrySet().stream()
            .map(e -> e.getValue() + " " + e.getKey())
            .collect(Collectors.joining(", "));
    return counts.isEmpty()
        ? Optional.empty()
        : Optional.of(Words.text("stock.unclear", stock.unclear().size(), list));
  }

  private static String name(Use use) {
    return use.item() + use.part().map(p -> " '" + p + "'").orElse("");
  }
}
