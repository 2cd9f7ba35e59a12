package org.thumbseal.history;

import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import org.thumbseal.trend.Crossing;

/**
 * What a pump needs.
 *
 * @param history of the pump
 * @param concern the most pressing one
 * @param due day of the next test; absent where there was none yet or it is not in use
 */
public record Outlook(History history, Concern concern, Optional<LocalDate> due) {
  /** After a jump so long ago nobody need be told of it at a glance, days. */
  private static final double RECENT = 180;

  private static final Comparator<Outlook> WORST_FIRST =
      Comparator.comparing((Outlook outlook) -> outlook.concern())
          .thenComparingDouble(Outlook::urgency)
          .thenComparing(o -> o.history().pump().id());

  /**
   * Weighs one history.
   *
   * @param zone whose calendar counts for what is due
   */
  public static Outlook of(History history, ZoneId zone) {
    Optional<LocalDate> due =
        history
            .last()
            .filter(test -> history.pump().care().inUse())
            .flatMap(PastTest::at)
            .map(at -> day(at, zone).plusMonths(history.pump().care().monthsBetween()));
    return new Outlook(history, concern(history, due, day(history.today(), zone)), due);
  }

  private static LocalDate day(Instant instant, ZoneId zone) {
    return instant.atZone(zone).toLocalDate();
  }

  private static Concern concern(History history, Optional<LocalDate> due, LocalDate today) {
    if (!history.pump().care().inUse()) {
      return Concern.RESTING;
    }
    Optional<PastTest> last = history.last();
    if (last.isEmpty()) {
      return Concern.UNTESTED;
    }
    return switch (last.get().outcome().verdict()) {
      case "fail" -> Concern.FAILED;
      case "inconclusive" -> Concern.UNDECIDED;
      default ->
          due.filter(day -> day.isBefore(today)).isPresent() ? Concern.OVERDUE : trend(history);
    };
  }

  private static Concern trend(History history) {
    if (history.soonest().isPresent()) {
      return Concern.HEADING;
    }
    if (history.courses().stream().anyMatch(c -> jumped(c, history.today()))) {
      return Concern.JUMPED;
    }
    boolean worsens = history.courses().stream().anyMatch(Course::worsens);
    return worsens ? Concern.WORSENING : Concern.NONE;
  }

  private static boolean jumped(Course course, Instant today) {
    return course.unexplained().filter(step -> Days.of(today) - step.after() < RECENT).isPresent();
  }

  /** Within one concern: the earliest day of a limit, else the oldest last test. */
  private double urgency() {
    double tested = history.last().flatMap(PastTest::at).map(Days::of).orElse(0.0);
    return concern == Concern.HEADING
        ? history.soonest().flatMap(Course::crossing).map(Crossing::earliest).orElse(tested)
        : tested;
  }

  /** Worst first. */
  public static List<Outlook> ordered(List<Outlook> outlooks) {
    return outlooks.stream().sorted(WORST_FIRST).toList();
  }
}
