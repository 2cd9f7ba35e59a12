package org.thumbseal.daemon;

import java.time.Duration;

/**
 * How patient a supervisor is.
 *
 * @param backOff waits between tries
 * @param silence without a good line for so long, a port on which there were good lines is lost
 * @param queueLines how many lines may wait to be taken; more are lost, and counted
 * @param waiting whether a port that cannot be opened at first is waited for, or given up
 */
public record Limits(BackOff backOff, Duration silence, int queueLines, boolean waiting) {
  /**
   * Silence of 5 s, for a sensor says who it is every 2 s; 8192 lines, which are 8 s of the fastest
   * sensor (1000 Hz) and 2 MB at the most; waiting.
   */
  public static final Limits STANDARD =
      new Limits(BackOff.STANDARD, Duration.ofSeconds(5), 8_192, true);

  /** Refuses with {@link IllegalArgumentException} a queue of fewer than four lines. */
  public Limits {
    if (queueLines < 4) {
      throw new IllegalArgumentException("the queue must hold at least 4 lines, not " + queueLines);
    }
  }
}
