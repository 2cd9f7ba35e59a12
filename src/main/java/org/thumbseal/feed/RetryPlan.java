package org.thumbseal.feed;

import java.time.Duration;

/**
 * How long to wait before the other side is tried again: doubling, with a cap. The wait is drawn
 * between half and all of that, so that the benches of a house do not all come at once when its
 * network is back (common practice).
 *
 * @param first after one failure
 * @param longest however many failures there were
 */
public record RetryPlan(Duration first, Duration longest) {
  /** From a second to five minutes. */
  public static final RetryPlan STANDARD =
      new RetryPlan(Duration.ofSeconds(1), Duration.ofMinutes(5));

  private static final int MOST_DOUBLINGS = 20;

  /**
   * The wait.
   *
   * @param failures in a row, 1 or more
   * @param chance from 0 up to 1
   */
  Duration after(int failures, double chance) {
    Duration grown = first.multipliedBy(1L << Math.min(Math.max(failures - 1, 0), MOST_DOUBLINGS));
    Duration most = grown.compareTo(longest) < 0 ? grown : longest;
    return Duration.ofNanos(Math.round(most.toNanos() * (1 + chance) / 2));
  }
}
