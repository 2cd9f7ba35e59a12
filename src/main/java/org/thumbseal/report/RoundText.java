package org.thumbseal.report;

import java.time.LocalDate;
import java.util.Locale;
import org.thumbseal.care.Due;
import org.thumbseal.care.Round;
import org.thumbseal.care.Urgency;
import org.thumbseal.json.Printable;

/** What is due as lines for a terminal. */
public final class RoundText {
  private static final int WIDEST = 30;

  private RoundText() {}

  /** All lines, each ended by LF. */
  public static String of(Round round, LocalDate today) {
    StringBuilder text = new StringBuilder(counts(round)).append('\n');
    for (Round.Stop stop : round.stops()) {
      String place = stop.location().isEmpty() ? Words.text("round.nowhere") : stop.location();
      text.append('\n').append(Printable.line(place)).append('\n');
      stop.pumps().forEach(visited -> pump(text, visited, today));
    }
    return text.toString();
  }

  private static String counts(Round round) {
    return Words.text(
        "round.counts",
        round.count(Urgency.OVERDUE),
        round.count(Urgency.THIS_WEEK),
        round.count(Urgency.THIS_MONTH));
  }

  private static void pump(StringBuilder text, Round.Visited visited, LocalDate today) {
    String description = visited.pump().description();
    String name = visited.pump().id() + (description.isEmpty() ? "" : "  " + description);
    text.append("  ").append(Printable.line(name)).append('\n');
    for (Due due : visited.dues()) {
      text.append(
          String.format(
              Locale.ROOT,
              "    %-14s %-" + WIDEST + "s %s  %s\n",
              DueWords.urgency(due.urgency()),
              DueWords.work(due),
              due.term().on(),
              DueWords.why(due, today)));
    }
  }
}
