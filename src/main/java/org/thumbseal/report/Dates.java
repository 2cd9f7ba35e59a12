package org.thumbseal.report;

import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneId;
import java.time.format.DateTimeFormatter;
import java.util.Locale;
import org.thumbseal.history.Days;

/**
 * Days in the words of the place where the pumps stand.
 *
 * @param zone whose calendar counts
 */
record Dates(ZoneId zone) {
  private static final DateTimeFormatter DAY =
      DateTimeFormatter.ofPattern("d MMM uuuu", Locale.ROOT);
  private static final DateTimeFormatter MONTH =
      DateTimeFormatter.ofPattern("MMM uuuu", Locale.ROOT);
  private static final DateTimeFormatter MINUTE =
      DateTimeFormatter.ofPattern("d MMM uuuu, HH:mm", Locale.ROOT);

  String day(Instant instant) {
    return DAY.format(instant.atZone(zone));
  }

  static String day(LocalDate day) {
    return DAY.format(day);
  }

  /** Of days since 1970. */
  String day(double days) {
    return day(Days.instant(days));
  }

  /** A forecast is no better than to the month. */
  String month(double days) {
    return MONTH.format(Days.instant(days).atZone(zone));
  }

  String minute(Instant instant) {
    return MINUTE.format(instant.atZone(zone));
  }
}
