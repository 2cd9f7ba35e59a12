package org.thumbseal.accuracy;

import static org.thumbseal.accuracy.Ranked.text;

import java.util.List;
import java.util.OptionalDouble;

/** How often the stated interval of k = 2 holds the truth. */
final class CoverageFigures {
  private static final List<String> QUANTITIES =
      List.of(Truth.OPEN, Truth.RISE, Truth.MAXIMUM, Truth.ONSET, Truth.SPEED, Truth.LEAK);
  private static final double LEAST = 0.92;
  private static final double MOST = 0.99;

  private CoverageFigures() {}

  /** A line for each quantity, held against the bar. */
  static List<Row> judged(String how, List<Trial> trials) {
    String must = "92-99 % inside";
    return QUANTITIES.stream()
        .map(
            name -> {
              String what = "coverage of U, " + name + ", " + how;
              Ranked shares = shares(name, trials);
              double inside = shares.isEmpty() ? 0 : shares.shareWithin(1);
              return shares.isEmpty()
                  ? Row.notMeasured(what, must)
                  : Row.judged(what, must, told(shares), inside >= LEAST && inside <= MOST);
            })
        .toList();
  }

  /** A line for each quantity that was measured, told only. */
  static List<Row> told(String how, List<Trial> trials) {
    return QUANTITIES.stream()
        .filter(name -> !shares(name, trials).isEmpty())
        .map(name -> Row.told("coverage of U, " + name + ", " + how, told(shares(name, trials))))
        .toList();
  }

  private static String told(Ranked shares) {
    return text(
        "%.1f %% (95 %% within %.2f U; n = %d)",
        100 * shares.shareWithin(1), shares.within(0.95), shares.count());
  }

  private static Ranked shares(String name, List<Trial> trials) {
    return Ranked.of(
        trials.stream().map(t -> t.share(name)).flatMapToDouble(OptionalDouble::stream));
  }
}
