package org.thumbseal.report;

import java.time.LocalDate;
import java.time.temporal.ChronoUnit;
import java.util.Locale;
import org.thumbseal.care.Cause;
import org.thumbseal.care.Due;
import org.thumbseal.care.Urgency;

/** What is due, in words. */
public final class DueWords {
  private DueWords() {}

  static String code(Urgency urgency) {
    return code((Enum<?>) urgency);
  }

  private static String code(Enum<?> word) {
    return word.name().toLowerCase(Locale.ROOT).replace('_', '-');
  }

  /** How soon. */
  public static String urgency(Urgency urgency) {
    return Words.of("urgency", code(urgency));
  }

  /** What is to be done. */
  public static String work(Due due) {
    return Words.of("work", due.work().code());
  }

  /** Why it is due then, and since when. */
  public static String why(Due due, LocalDate today) {
    Due.Term term = due.term();
    long late = ChronoUnit.DAYS.between(term.on(), today);
    String cause =
        term.cause() == Cause.TERM
            ? Words.text("due.last", term.last().map(LocalDate::toString).orElse("?"))
            : Words.of("due", code(term.cause()));
    boolean counted = late > 0 && term.cause() != Cause.NEVER_DONE;
    return counted ? Words.text("due.late", late, cause) : cause;
  }
}
