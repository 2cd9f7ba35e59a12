package org.thumbseal.quantity;

import java.time.Instant;
import java.time.LocalDateTime;
import java.time.OffsetDateTime;
import java.time.ZoneOffset;
import java.time.format.DateTimeFormatter;
import java.time.format.DateTimeParseException;
import java.time.temporal.TemporalAccessor;
import java.util.Arrays;
import java.util.Locale;
import java.util.Optional;

/** How tables and sensors write their times. */
public enum TimeScale {
  /** Written {@code us}, or with the micro sign or the Greek mu. */
  MICROSECOND(1e-6, "us|\u00b5s|\u03bcs"),
  /** Written {@code ms}. */
  MILLISECOND(1e-3, "ms"),
  /** Written {@code s}. */
  SECOND(1, "s|sec"),
  /** Written {@code min}. */
  MINUTE(60, "min"),
  /** Date and time of day, with offset or without; no number at all. */
  ISO_8601(1, "iso|iso8601");

  /** For error messages. */
  public static final String SYMBOLS = "us, ms, s, min or iso";

  private final double seconds;
  private final String symbols;

  TimeScale(double seconds, String symbols) {
    this.seconds = seconds;
    this.symbols = symbols;
  }

  /** The scale of a symbol; capitals do not matter. */
  public static Optional<TimeScale> ofSymbol(String symbol) {
    String lower = symbol.toLowerCase(Locale.ROOT);
    return Arrays.stream(values()).filter(s -> lower.matches(s.symbols)).findFirst();
  }

  /** Seconds in a span of this unit; dividing keeps whole milliseconds exact. */
  public double toSeconds(double value) {
    return seconds < 1 ? value / Math.rint(1 / seconds) : value * seconds;
  }

  /** Date and time of ISO 8601, a space or T between them, comma or point before the fraction. */
  public static Optional<TemporalAccessor> isoTime(String cell) {
    String strict = cell.strip().replaceFirst(" ", "T").replace(',', '.');
    try {
      return Optional.of(
          DateTimeFormatter.ISO_DATE_TIME.parseBest(
              strict, OffsetDateTime::from, LocalDateTime::from));
    } catch (DateTimeParseException e) {
      return Optional.empty();
    }
  }

  /** Seconds since 1970; a time without offset is counted as if it were UTC. */
  public static double isoSeconds(TemporalAccessor time) {
    Instant instant =
        time instanceof LocalDateTime local
            ? local.toInstant(ZoneOffset.UTC)
            : OffsetDateTime.from(time).toInstant();
    return instant.getEpochSecond() + instant.getNano() / 1e9;
  }
}
