package org.thumbseal.capture;

import java.time.Instant;
import java.time.OffsetDateTime;
import java.time.temporal.ChronoUnit;
import java.util.Optional;
import java.util.OptionalDouble;
import org.thumbseal.quantity.TimeScale;

/**
 * Times as a column has them.
 *
 * @param scale their unit
 * @param style how its numbers are written
 */
record TimeCells(TimeScale scale, NumberStyle style) {
  /** No stopwatch has run for 31 years: such a number counts from 1970 (2001 to 2096). */
  private static final double UNIX_FROM = 1e9;

  private static final double UNIX_TO = 4e9;

  /** Seconds since whatever the column counts from; empty where the cell is no time. */
  OptionalDouble seconds(String cell) {
    if (scale == TimeScale.ISO_8601) {
      return TimeScale.isoTime(cell).stream().mapToDouble(TimeScale::isoSeconds).findFirst();
    }
    return style.read(cell).stream().map(scale::toSeconds).findFirst();
  }

  /** The wall clock of a cell, where it tells. */
  Optional<Instant> instant(String cell) {
    if (scale == TimeScale.ISO_8601) {
      return TimeScale.isoTime(cell)
          .filter(OffsetDateTime.class::isInstance)
          .map(time -> OffsetDateTime.from(time).toInstant());
    }
    return seconds(cell).stream()
        .filter(s -> s >= UNIX_FROM && s < UNIX_TO)
        .mapToObj(s -> Instant.EPOCH.plus(Math.round(s * 1e6), ChronoUnit.MICROS))
        .findFirst();
  }
}
