package org.thumbseal.seal;

import java.time.DateTimeException;
import java.time.OffsetDateTime;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import tools.jackson.core.JsonPointer;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.node.ObjectNode;

/** The time at which, by its own words, a document came to be. */
final class DocumentTime {
  private static final List<JsonPointer> PLACES =
      Stream.of("/correctedAt", "/calibratedAt", "/test/startedAt")
          .map(JsonPointer::compile)
          .toList();

  private DocumentTime() {}

  /** Empty when it says none, or nothing that is one. */
  static Optional<StatedTime> of(ObjectNode document) {
    return PLACES.stream()
        .map(document::at)
        .filter(JsonNode::isString)
        .findFirst()
        .flatMap(time -> read(time.stringValue()));
  }

  private static Optional<StatedTime> read(String text) {
    try {
      return Optional.of(StatedTime.of(OffsetDateTime.parse(text).toInstant()));
    } catch (DateTimeException e) {
      return Optional.empty();
    }
  }
}
