package org.thumbseal.report;

import java.time.DateTimeException;
import java.time.Instant;
import java.time.OffsetDateTime;
import java.time.ZoneOffset;
import java.time.format.DateTimeFormatter;
import java.util.Locale;
import java.util.Optional;
import org.thumbseal.json.DocumentView;

/** Instants of tests in words that nobody takes for local time. */
final class UtcTime {
  private static final DateTimeFormatter FORM =
      DateTimeFormatter.ofPattern("d MMM uuuu, HH:mm:ss 'UTC (+00:00)'", Locale.ROOT);

  private UtcTime() {}

  /** The instant of the blocking, from that of the first sample. */
  static Optional<Instant> blocked(DocumentView document) {
    try {
      double seconds = document.number("/test/occludedAt").orElse(0.0);
      OffsetDateTime started =
          OffsetDateTime.parse(document.text("/test/startedAt").orElse(""))
              .withOffsetSameInstant(ZoneOffset.UTC);
      return Optional.of(started.toInstant().plusNanos(Math.round(seconds * 1e9)));
    } catch (DateTimeException e) {
      return Optional.empty();
    }
  }

  /** The same for people; empty where the recording had no date. */
  static Optional<String> text(DocumentView document) {
    return blocked(document).map(instant -> FORM.format(instant.atOffset(ZoneOffset.UTC)));
  }
}
