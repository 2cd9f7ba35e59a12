package org.thumbseal.index;

import java.time.DateTimeException;
import java.time.Instant;
import java.time.LocalDate;
import java.time.OffsetDateTime;
import java.time.ZoneOffset;
import java.time.format.DateTimeFormatter;
import java.time.format.DateTimeFormatterBuilder;
import java.time.temporal.ChronoUnit;
import java.util.Optional;

/** Texts as they stand in the tables. */
final class Texts {
  /** PostgreSQL refuses index entries of more than about 2700 bytes. */
  static final int LONGEST_NAME = 500;

  private static final int LONGEST = 4000;
  private static final DateTimeFormatter MILLIS =
      new DateTimeFormatterBuilder().appendInstant(3).toFormatter();

  private Texts() {}

  /** Without what a base cannot hold: PostgreSQL takes no NUL. */
  static String clean(String text) {
    String cut = text.length() > LONGEST ? text.substring(0, LONGEST) : text;
    StringBuilder out = new StringBuilder(cut.length());
    cut.codePoints().forEach(c -> out.appendCodePoint(isHeld(c) ? c : 0xFFFD));
    return out.toString();
  }

  private static boolean isHeld(int codePoint) {
    return codePoint != 0 && Character.getType(codePoint) != Character.SURROGATE;
  }

  /** An instant whose text sorts as time; absent where there is none, or it has no year. */
  static Optional<String> instant(Optional<String> text) {
    try {
      return text.map(t -> OffsetDateTime.parse(t).withOffsetSameInstant(ZoneOffset.UTC))
          .filter(time -> time.getYear() >= 1 && time.getYear() <= 9999)
          .map(time -> of(time.toInstant()));
    } catch (DateTimeException e) {
      return Optional.empty();
    }
  }

  static String of(Instant instant) {
    return MILLIS.format(instant.truncatedTo(ChronoUnit.MILLIS));
  }

  static Optional<String> day(Optional<String> text) {
    try {
      return text.map(LocalDate::parse)
          .filter(day -> day.getYear() >= 1 && day.getYear() <= 9999)
          .map(LocalDate::toString);
    } catch (DateTimeException e) {
      return Optional.empty();
    }
  }
}
