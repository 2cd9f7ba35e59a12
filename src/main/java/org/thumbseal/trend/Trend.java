package org.thumbseal.trend;

import java.util.List;
import java.util.Optional;

/**
 * What a series says.
 *
 * @param steps jumps, in order; only what came after the last one counts for the trend
 * @param line the trend; absent where none is stated
 * @param silence why none is stated; absent where one is
 */
public record Trend(List<Step> steps, Optional<TrendLine> line, Optional<Silence> silence) {
  /** Median distance to the middle of a normal distribution is this share of its deviation. */
  private static final double MEDIAN_SHARE = 0.6744897501960817;

  /** Copies the list. */
  public Trend {
    steps = List.copyOf(steps);
  }

  /** Looks for steps first, then for a trend in what came after the last. */
  public static Trend of(Series series, TrendRules rules) {
    Breaks breaks = new Breaks(series.thinned());
    Points tail = breaks.tail();
    int tests = comparable(tail);
    if (tests < rules.leastTests()) {
      return breaks
          .lives()
          .line(rules)
          .map(line -> new Trend(breaks.steps(), Optional.of(line), Optional.empty()))
          .orElseGet(() -> silent(breaks, Silence.TOO_FEW));
    }
    if (tail.span() < rules.leastDays()) {
      return silent(breaks, Silence.TOO_SHORT);
    }
    double chance = Kendall.of(tail).twoSided();
    return chance > 1 - rules.confidence()
        ? silent(breaks, Silence.NOT_SIGNIFICANT)
        : new Trend(breaks.steps(), Optional.of(line(tail, rules, chance)), Optional.empty());
  }

  private static Trend silent(Breaks breaks, Silence why) {
    return new Trend(breaks.steps(), Optional.empty(), Optional.of(why));
  }

  /** Tests of which there is another one by the same sensor. */
  private static int comparable(Points tail) {
    return tail.bySensor().stream().mapToInt(Points::size).filter(n -> n > 1).sum();
  }

  private static TrendLine line(Points tail, TrendRules rules, double chance) {
    TheilSen line = TheilSen.of(tail, rules.confidence());
    Points level = tail.levelled(line.slope());
    return TrendLine.through(
        level,
        new TrendLine.Slope(line.slope(), line.low(), line.high()),
        scatter(level, level.level(line.slope()), line.slope()),
        chance);
  }

  /** Two numbers were fitted: by n/(n-2) the variance of what is left is too small. */
  private static double scatter(Points points, double beginning, double slope) {
    int n = points.size();
    double[] left = new double[n];
    for (int i = 0; i < n; i++) {
      left[i] = Math.abs(points.value(i) - beginning - slope * points.day(i));
    }
    return Median.of(left) / MEDIAN_SHARE * Math.sqrt((double) n / (n - 2));
  }
}
