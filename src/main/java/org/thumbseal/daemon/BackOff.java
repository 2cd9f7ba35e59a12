package org.thumbseal.daemon;

import java.time.Duration;

/**
 * How long to wait before a port is tried again: doubling from the first wait to the longest.
 *
 * @param first after one failure; for real serial ports not under a second, for drivers that are
 *     opened in quick succession may fail until the next replug
 * @param longest however many failures there were
 */
public record BackOff(Duration first, Duration longest) {
  /** 1 s, 2 s, then 4 s: a port that comes back is read again within 5 s. */
  public static final BackOff STANDARD = new BackOff(Duration.ofSeconds(1), Duration.ofSeconds(4));

  private static final int MOST_DOUBLINGS = 20;

  /** Refuses with {@link IllegalArgumentException} waits that are not positive or shrink. */
  public BackOff {
    if (first.isNegative() || first.isZero() || longest.compareTo(first) < 0) {
      throw new IllegalArgumentException("waits must grow from more than zero");
    }
  }

  /**
   * The wait.
   *
   * @param failures how often it failed in a row, 1 or more
   */
  Duration after(int failures) {
    Duration wait = first.multipliedBy(1L << Math.min(Math.max(failures - 1, 0), MOST_DOUBLINGS));
    return wait.compareTo(longest) < 0 ? wait : longest;
  }
}
