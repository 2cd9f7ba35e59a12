package org.thumbseal.trend;

/**
 * The line of a significant trend, as the last sensor reads.
 *
 * @param base the tests it rests on
 * @param pivot the day about which the slope is uncertain
 * @param level on that day
 * @param slope its change per day, with the interval
 * @param scatter standard deviation of single tests about it, robust
 * @param chance probability that a series without a trend looks so
 */
public record TrendLine(
    Base base, double pivot, double level, Slope slope, double scatter, double chance) {

  /**
   * What the line rests on.
   *
   * @param from day of the first test
   * @param to day of the last test
   * @param tests visits
   */
  public record Base(double from, double to, int tests) {}

  /**
   * Change per day.
   *
   * @param value the median slope
   * @param low end of its interval
   * @param high end of its interval
   */
  public record Slope(double value, double low, double high) {}

  /** One test in twenty lies beyond, on one side. */
  private static final double ONE_SIDED = 1.6448536269514722;

  /** Through values of one level of sensor, by the median of what the slope leaves. */
  static TrendLine through(Points level, Slope slope, double scatter, double chance) {
    double pivot = level.middleDay();
    return new TrendLine(
        new Base(level.day(0), level.day(level.size() - 1), level.size()),
        pivot,
        level.level(slope.value()) + slope.value() * pivot,
        slope,
        scatter,
        chance);
  }

  /** The line on a day. */
  public double at(double day) {
    return level + slope.value() * (day - pivot);
  }

  /** The lowest that a single test is likely to read on a day: 95 % lie above. */
  public double lowest(double day) {
    return level
        + Math.min(slope.low() * (day - pivot), slope.high() * (day - pivot))
        - ONE_SIDED * scatter;
  }

  /** The highest that a single test is likely to read on a day: 95 % lie below. */
  public double highest(double day) {
    return level
        + Math.max(slope.low() * (day - pivot), slope.high() * (day - pivot))
        + ONE_SIDED * scatter;
  }
}
