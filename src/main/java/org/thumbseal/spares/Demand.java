package org.thumbseal.spares;

import java.util.Optional;

/** How many of a part are used in days to come. */
public sealed interface Demand permits CountedDemand, SaidDemand {
  /** Days of an average month, 365.25 / 12. */
  double MONTH = 30.4375;

  /** Estimated use a month. */
  double perMonth();

  /** Interval of the use a month that has the true one with 95 %; empty for an estimate. */
  Optional<Interval> interval();

  /**
   * The number that use does not exceed.
   *
   * @param days from now, 0 or more
   * @param probability between 0 and 1, such as 0.95
   */
  int atMost(int days, double probability);

  /**
   * Bounds.
   *
   * @param low lower
   * @param high upper
   */
  record Interval(double low, double high) {}
}
