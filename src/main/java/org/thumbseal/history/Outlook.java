package org.thumbseal.history;

import java.time.Instant;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import org.thumbseal.care.Due;
import org.thumbseal.care.Urgency;
import org.thumbseal.care.Work;
import org.thumbseal.trend.Crossing;

/**
 * What a pump needs.
 *
 * @param history of the pump
 * @param concern the most pressing one
 * @param overdue works whose day is over, the earliest first; none where it is not in use
 */
public record Outlook(History history, Concern concern, List<Due> overdue) {
  /** After a jump so long ago nobody need be told of it at a glance, days. */
  private static final double RECENT = 180;

  private static final Comparator<Outlook> WORST_FIRST =
      Comparator.comparing((Outlook outlook) -> outlook.concern())
          .thenComparingDouble(Outlook::urgency)
          .thenComparing(o -> o.history().pump().id());

  /** Keeps a copy. */
  public Outlook {
    overdue = List.copyOf(overdue);
  }

  /**
   * Weighs one history.
   *
   * @param dues what will be due on this pump; works that a place keeps no record of left out
   */
  public static Outlook of(History history, List<Due> dues) {
    List<Due> overdue =
        dues.stream()
            .filter(due -> history.pump().inUse() && due.urgency() == Urgency.OVERDUE)
            .sorted(Comparator.comparing(due -> due.term().on()))
            .toList();
    return new Outlook(history, concern(history, overdue), overdue);
  }

  private static Concern concern(History history, List<Due> overdue) {
    if (!history.pump().inUse()) {
      return Concern.RESTING;
    }
    Optional<PastTest> last = history.last();
    if (last.isEmpty()) {
      return Concern.UNTESTED;
    }
    return switch (last.get().outcome().verdict()) {
      case "fail" -> Concern.FAILED;
      case "inconclusive" -> Concern.UNDECIDED;
      default -> late(history, overdue);
    };
  }

  private static Concern late(History history, List<Due> overdue) {
    if (overdue.stream().anyMatch(due -> due.work() == Work.OCCLUSION_TEST)) {
      return Concern.OVERDUE;
    }
    Concern trend = trend(history);
    return trend == Concern.NONE && !overdue.isEmpty() ? Concern.NEGLECTED : trend;
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

  /** The test, if its day is over. */
  public Optional<Due> overdueTest() {
    return overdue.stream().filter(due -> due.work() == Work.OCCLUSION_TEST).findFirst();
  }

  /** The other works whose day is over. */
  public List<Due> overdueWorks() {
    return overdue.stream().filter(due -> due.work() != Work.OCCLUSION_TEST).toList();
  }

  /** Within one concern: the earliest day of a limit, of what is overdue, or of the last test. */
  private double urgency() {
    double tested = history.last().flatMap(PastTest::at).map(Days::of).orElse(0.0);
    return switch (concern) {
      case HEADING ->
          history.soonest().flatMap(Course::crossing).map(Crossing::earliest).orElse(tested);
      case OVERDUE, NEGLECTED -> overdue.get(0).term().on().toEpochDay();
      default -> tested;
    };
  }

  /** Worst first. */
  public static List<Outlook> ordered(List<Outlook> outlooks) {
    return outlooks.stream().sorted(WORST_FIRST).toList();
  }
}
