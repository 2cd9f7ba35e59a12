package org.thumbseal.register;

import java.util.Locale;
import java.util.Optional;
import java.util.stream.Stream;

/** The columns that mean something to the program; any other is kept as it is. */
enum Column {
  ID,
  DESCRIPTION,
  LOCATION,
  SERIAL,
  JAR_L,
  RATED_L_MIN,
  CRITERIA,
  IN_SERVICE,
  STATUS,
  INTERVAL_MONTHS,
  INSPECTION_MONTHS,
  STERILISE_MONTHS;

  /** The name in the header line. */
  String title() {
    return name().toLowerCase(Locale.ROOT);
  }

  /** The column of a name, in capitals or not. */
  static Optional<Column> of(String title) {
    return all().filter(c -> c.title().equals(title.toLowerCase(Locale.ROOT))).findFirst();
  }

  /** The column that a name which is none was perhaps meant for: {@code Jar L}, {@code jar-l}. */
  static Optional<Column> like(String title) {
    return all().filter(c -> bare(c.title()).equals(bare(title))).findFirst();
  }

  private static String bare(String title) {
    return title.toLowerCase(Locale.ROOT).replaceAll("[^a-z]+", "");
  }

  private static Stream<Column> all() {
    return Stream.of(values());
  }
}
