package org.thumbseal.trend;

/**
 * When something is said.
 *
 * @param confidence two-sided, of a trend: 0.95 says that one in twenty series without a trend
 *     looks like one
 * @param leastTests fewer visits than this are no trend
 * @param leastDays nor are tests that all lie within this time
 * @param horizonDays a limit that is reached later than this is too far off to name
 */
public record TrendRules(double confidence, int leastTests, double leastDays, double horizonDays) {
  /** What is used unless somebody asks otherwise; the figures are in {@code trend.md}. */
  public static final TrendRules USUAL = new TrendRules(0.95, 6, 90, 730);

  /** Refuses what makes no sense. */
  public TrendRules {
    if (!(confidence > 0 && confidence < 1) || leastTests < 4 || leastDays < 0) {
      throw new IllegalArgumentException("no rules for a trend: " + confidence + ", " + leastTests);
    }
  }
}
