package org.thumbseal.archive;

import java.nio.file.Path;
import java.time.DateTimeException;
import java.time.Instant;
import java.time.OffsetDateTime;
import java.time.ZoneOffset;
import java.time.format.DateTimeFormatter;
import java.util.Locale;
import java.util.Optional;
import tools.jackson.databind.JsonNode;

/**
 * Where a result is stored: {@code <folder>/<stem>_<beginning of the id>} and {@code .json} or
 * {@code .log}. The folder is the year, the stem the instant of blocking (of the start, where none
 * followed) in UTC, the asset and the verdict; for a calibration its instant, the sensor and {@code
 * calibration}; for a correction its instant, the asset as corrected and {@code correction}; for
 * what a person did to a pump the instant at which it was said, the asset and {@code inspection};
 * for a leak search likewise its end, the asset and {@code leak-search}. Whatever the document
 * holds, no name leaves the folder.
 *
 * @param folder four digits, or {@code undated} for a test without a date
 * @param stem name up to the id
 * @param id the whole id, hexadecimal digits alone
 */
record ResultName(String folder, String stem, String id) {
  static final String DOCUMENT = ".json";
  static final String CAPTURE = ".log";

  /** Kind of document, and its place in the name where a result has its verdict. */
  static final String CALIBRATION = "calibration";

  /** Likewise. */
  static final String CORRECTION = "correction";

  /** Likewise. */
  static final String INSPECTION = "inspection";

  /** Likewise. */
  static final String LEAK_SEARCH = "leak-search";

  private static final int SHORTEST_ID = 8;
  private static final int LONGEST_ASSET = 40;
  private static final double LONGEST_CAPTURE = 1e9;
  private static final DateTimeFormatter TIME =
      DateTimeFormatter.ofPattern("uuuuMMdd'T'HHmmss'Z'", Locale.ROOT);
  private static final String UNDATED = "undated";

  static ResultName of(JsonNode document) {
    String id = document.path("id").asString("").replaceAll("[^0-9a-f]", "");
    if (id.length() < SHORTEST_ID) {
      throw new IllegalArgumentException("a result without an id cannot be stored");
    }
    Optional<OffsetDateTime> time = instant(document);
    return new ResultName(
        time.map(t -> String.format(Locale.ROOT, "%04d", t.getYear())).orElse(UNDATED),
        time.map(TIME::format).orElse(UNDATED) + "_" + asset(document) + "_" + verdict(document),
        id);
  }

  /** The name with so many digits of the id: the first eight, more when those are taken. */
  String withIdDigits(int digits) {
    return stem + "_" + id.substring(0, Math.min(digits, id.length()));
  }

  /** What every file of this id has at the end of its name, after an underscore. */
  String mark() {
    return id.substring(0, SHORTEST_ID);
  }

  /** The mark in the name of a stored document; whatever stands there when it is none of ours. */
  static String mark(String fileName) {
    String end = fileName.substring(fileName.lastIndexOf('_') + 1);
    return end.substring(0, Math.min(SHORTEST_ID, end.length()));
  }

  /** Whether this is the name of a stored correction. */
  static boolean isCorrection(Path file) {
    return isNamed(file, CORRECTION);
  }

  /** Whether this is the name of a stored calibration. */
  static boolean isCalibration(Path file) {
    return isNamed(file, CALIBRATION);
  }

  /** Whether this is the name of a stored document that is about no test. */
  static boolean isOfNoTest(Path file) {
    return isCorrection(file)
        || isCalibration(file)
        || isNamed(file, INSPECTION)
        || isNamed(file, LEAK_SEARCH);
  }

  /** Whether those who read documents of this kind, and go by the names, open this file at all. */
  static boolean isFound(Path file, String kind) {
    return switch (kind) {
      case CALIBRATION, CORRECTION, INSPECTION, LEAK_SEARCH -> isNamed(file, kind);
      default -> true;
    };
  }

  private static boolean isNamed(Path file, String kind) {
    return file.getFileName().toString().matches(".*_" + kind + "_[0-9a-f]+\\.json");
  }

  private static String kind(JsonNode document) {
    return document.path("kind").asString("");
  }

  /** Of blocking, calibrating or correcting. */
  private static Optional<OffsetDateTime> instant(JsonNode document) {
    return switch (kind(document)) {
      case CALIBRATION -> said(document.path("calibratedAt"));
      case CORRECTION -> said(document.path("correctedAt"));
      case INSPECTION -> said(document.path("recordedAt"));
      case LEAK_SEARCH -> said(document.path("searchedAt"));
      default -> time(document.path("test"));
    };
  }

  private static Optional<OffsetDateTime> said(JsonNode instant) {
    try {
      OffsetDateTime time = OffsetDateTime.parse(instant.asString(""));
      return Optional.of(time.withOffsetSameInstant(ZoneOffset.UTC)).filter(ResultName::hasYear);
    } catch (DateTimeException e) {
      return Optional.empty();
    }
  }

  /** One that four digits can say. */
  private static boolean hasYear(OffsetDateTime time) {
    return time.getYear() >= 1 && time.getYear() <= 9999;
  }

  private static Optional<OffsetDateTime> time(JsonNode test) {
    try {
      Instant started = OffsetDateTime.parse(test.path("startedAt").asString("")).toInstant();
      JsonNode start = test.path("start").path("at");
      JsonNode at = test.has("occludedAt") ? test.path("occludedAt") : start;
      OffsetDateTime time =
          started.plusNanos(Math.round(seconds(at) * 1e9)).atOffset(ZoneOffset.UTC);
      return Optional.of(time).filter(ResultName::hasYear);
    } catch (DateTimeException | ArithmeticException e) {
      return Optional.empty();
    }
  }

  /** A number of seconds, or a quantity in seconds; 0 when there is none. */
  private static double seconds(JsonNode node) {
    double seconds = node.isObject() ? node.path("value").asDouble(0) : node.asDouble(0);
    if (Math.abs(seconds) > LONGEST_CAPTURE) {
      throw new DateTimeException("no capture is that long");
    }
    return seconds;
  }

  private static String asset(JsonNode document) {
    JsonNode id = subject(document).path("id");
    return id.isString() ? safe(id.stringValue(), LONGEST_ASSET, "asset") : "unassigned";
  }

  private static JsonNode subject(JsonNode document) {
    return switch (kind(document)) {
      case CALIBRATION -> document.path("sensor");
      case CORRECTION ->
          document.path(document.path("change").has("asset") ? "change" : "was").path("asset");
      default -> document.path("asset");
    };
  }

  private static String verdict(JsonNode document) {
    return switch (kind(document)) {
      case CALIBRATION -> CALIBRATION;
      case CORRECTION -> CORRECTION;
      case INSPECTION -> INSPECTION;
      case LEAK_SEARCH -> LEAK_SEARCH;
      default -> safe(document.path("verdict").asString(""), 12, "none");
    };
  }

  /**
   * Letters, digits, full stops and hyphens of ASCII; the underscore is left to part the fields.
   */
  static String safe(String text, int longest, String otherwise) {
    String plain = text.replaceAll("[^A-Za-z0-9.]+", "-").replaceAll("^[-.]+|[-.]+$", "");
    String cut = plain.substring(0, Math.min(longest, plain.length())).replaceAll("[-.]+$", "");
    return cut.isEmpty() ? otherwise : cut;
  }
}
