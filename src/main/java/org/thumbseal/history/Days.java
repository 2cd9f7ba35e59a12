package org.thumbseal.history;

import java.time.Instant;

/** Instants as days since 1970-01-01T00:00Z, and back. */
public final class Days {
  private static final double SECONDS = 86_400;

  private Days() {}

  /** Days with their fraction. */
  public static double of(Instant instant) {
    return instant.toEpochMilli() / 1000.0 / SECONDS;
  }

  /** To the second. */
  public static Instant instant(double days) {
    return Instant.ofEpochSecond(Math.round(days * SECONDS));
  }
}
