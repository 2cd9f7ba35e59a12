package org.thumbseal.seek;

import org.thumbseal.quantity.NormalDistribution;

/**
 * When a loss of vacuum counts as a leak.
 *
 * <p>A search looks at many differences, and each could be taken for a leak by chance. They are
 * bounded beforehand: a station is tested twice at most, and a test adds at most one difference
 * with every other station. With n stations that makes 2n(n - 1) looks, whatever the order and
 * wherever the search stops, so each may be wrong one-sided with a probability of 0.05/(2n(n - 1))
 * (Bonferroni): with five stations 3.02 standard uncertainties in the place of 1.64. Over a whole
 * search at most one in twenty then names a section that leaks no more than {@link #LEAST_SHARE}.
 */
public final class LeakRules {
  /** Chance that a whole search names a section that does not leak. */
  public static final double FALSE_ALARM = 0.05;

  /** How often a station counts at most. */
  public static final int TESTS_A_STATION = 2;

  /**
   * A leak counts from this share of the pump's flow on: the limit on the vacuum side of sampling
   * systems, 0.5 % of the flow in use (40 CFR 89.316(a)(2)). As a loss of vacuum it is the same
   * share of ambient pressure, whatever the speed.
   */
  public static final double LEAST_SHARE = 0.005;

  /**
   * How far the same pump differs from one test to the next a few minutes later, standard
   * uncertainty, kPa: of the size that is usual for a warm pump and a thumb (common practice, no
   * published source).
   */
  public static final double REPEATABILITY_KILOPASCALS = 0.15;

  /**
   * No pump of this kind goes below this share of ambient pressure: a single-stage diaphragm pump
   * ends at about 70 hPa (a handbook of vacuum technology). So much may leak in where nobody looked
   * yet, at most.
   */
  public static final double LOWEST_SHARE = 0.07;

  private LeakRules() {}

  /** How many differences a search looks at, at most. */
  public static int looks(int stations) {
    return TESTS_A_STATION * stations * (stations - 1);
  }

  /** How many standard uncertainties a loss has to stand off. */
  public static double factor(int stations) {
    return NormalDistribution.quantile(1 - FALSE_ALARM / looks(stations));
  }

  /** The loss from which on a leak counts, kPa. */
  public static double least(double ambient) {
    return LEAST_SHARE * ambient;
  }
}
