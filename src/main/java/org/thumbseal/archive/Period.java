package org.thumbseal.archive;

import java.time.DateTimeException;
import java.time.Instant;
import java.time.OffsetDateTime;
import java.util.Optional;
import java.util.stream.Stream;
import tools.jackson.databind.JsonNode;

/**
 * From when to when, by the dates in documents.
 *
 * @param from the earliest
 * @param to the latest
 */
public record Period(Instant from, Instant to) {
  /** Where the kinds of document have the instant they are about. */
  private static final String[] DATES = {
    "/test/startedAt", "/calibratedAt", "/recordedAt", "/searchedAt"
  };

  /** The instant of one document; empty when it has none. */
  static Optional<Period> of(JsonNode document) {
    return Stream.of(DATES).flatMap(date -> instant(document.at(date)).stream()).findFirst();
  }

  /** The shortest period with both in it. */
  Period with(Period other) {
    return new Period(
        from.isBefore(other.from) ? from : other.from, to.isAfter(other.to) ? to : other.to);
  }

  private static Optional<Period> instant(JsonNode text) {
    try {
      Instant instant = OffsetDateTime.parse(text.asString("")).toInstant();
      return Optional.of(new Period(instant, instant));
    } catch (DateTimeException e) {
      return Optional.empty();
    }
  }
}
