package org.thumbseal.daemon;

import java.time.Duration;

/**
 * How long to wait before a port is tried again: doubling from the first wait to the longest.
 *
 * @param first after one failure; for real serial ports not under a second, for drivers that are
 *     opened in quick succession may fail until the next replug
 * @param longest however many failures there were
 * @param absent the longest while the port is not there at all: looking touches no driver
 */
public record BackOff(Duration first, Duration longest, Duration absent) {
  /** 1 s to 10 s; to 4 s where it is not there, so that it is read within 5 s of its return. */
  public static final BackOff STANDARD =
      new BackOff(Duration.ofSeconds(1), Duration.ofSeconds(10), Duration.ofSeconds(4));

  private static final int MOST_DOUBLINGS = 20;

  /** Refuses with {@link IllegalArgumentException} waits that are not positive or shrink. */
  public BackOff {
    if (first.isNegative()
        || first.isZero()
        || longest.compareTo(first) < 0
        || absent.compareTo(first) < 0) {
      throw new IllegalArgumentException("waits must grow from more than zero");
    }
  }

  /** The same longest wait whatever is wrong. */
  public BackOff(Duration first, Duration longest) {
    this(first, longest, longest);
  }

  /**
   * The wait.
   *
   * @param failures how often it failed in a row, 1 or more
   * @param isThere whether there is a port to be opened
   */
  Duration after(int failures, boolean isThere) {
    Duration most = isThere ? longest : absent;
    Duration wait = first.multipliedBy(1L << Math.min(Math.max(failures - 1, 0), MOST_DOUBLINGS));
    return wait.compareTo(most) < 0 ? wait : most;
  }
}
