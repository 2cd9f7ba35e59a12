package org.thumbseal.seal;

import java.time.DateTimeException;
import java.time.Instant;
import java.time.LocalDate;
import java.time.OffsetDateTime;
import java.time.ZoneOffset;
import java.util.Optional;
import java.util.regex.Pattern;

/**
 * A time (RFC 3339) or a date as somebody wrote it. A date stands for the whole day, UTC.
 *
 * @param text as written
 * @param first the first instant it stands for
 * @param last the last one
 */
public record StatedTime(String text, Instant first, Instant last) {
  private static final Pattern DATE = Pattern.compile("\\d{4}-\\d\\d-\\d\\d");
  private static final Pattern TIME =
      Pattern.compile(
          "\\d{4}-\\d\\d-\\d\\dT\\d\\d:\\d\\d:\\d\\d(\\.\\d{1,9})?(Z|[+-]\\d\\d:\\d\\d)");

  static StatedTime of(Instant instant) {
    return new StatedTime(instant.toString(), instant, instant);
  }

  /** Empty when it is neither. */
  static Optional<StatedTime> read(String text) {
    try {
      if (DATE.matcher(text).matches()) {
        return Optional.of(day(text, LocalDate.parse(text)));
      }
      return Optional.of(text)
          .filter(t -> TIME.matcher(t).matches())
          .map(t -> OffsetDateTime.parse(t).toInstant())
          .map(instant -> new StatedTime(text, instant, instant));
    } catch (DateTimeException e) {
      return Optional.empty();
    }
  }

  private static StatedTime day(String text, LocalDate date) {
    Instant first = date.atStartOfDay(ZoneOffset.UTC).toInstant();
    Instant next = date.plusDays(1).atStartOfDay(ZoneOffset.UTC).toInstant();
    return new StatedTime(text, first, next.minusNanos(1));
  }
}
