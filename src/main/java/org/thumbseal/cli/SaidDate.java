package org.thumbseal.cli;

import java.time.DateTimeException;
import java.time.LocalDate;
import java.time.ZoneId;
import org.jspecify.annotations.Nullable;
import org.thumbseal.link.HostClock;

/** A day as a person means it: that of the place, by this computer's time zone. */
final class SaidDate {
  private SaidDate() {}

  /** Today. */
  static LocalDate today(HostClock clock) {
    return LocalDate.ofInstant(clock.wall(), ZoneId.systemDefault());
  }

  /** The day given, today where none was. */
  static LocalDate or(String option, @Nullable String given, LocalDate today) {
    return given == null ? today : parse(option, given);
  }

  /** The same, for what is over. */
  static LocalDate notAfterToday(String option, @Nullable String given, HostClock clock) {
    LocalDate today = today(clock);
    LocalDate day = or(option, given, today);
    if (day.isAfter(today)) {
      throw Failure.usage(option + " " + given + " is still to come: today is " + today);
    }
    return day;
  }

  private static LocalDate parse(String option, String text) {
    try {
      return LocalDate.parse(text);
    } catch (DateTimeException e) {
      throw Failure.usage(option + ": '" + text + "' is no date; write it as 2027-11-25");
    }
  }
}
