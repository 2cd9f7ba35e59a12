package org.thumbseal.cli;

import java.time.Instant;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import org.thumbseal.fleet.Life;
import org.thumbseal.history.Course;
import org.thumbseal.history.Days;
import org.thumbseal.history.History;
import org.thumbseal.history.PastTest;
import org.thumbseal.history.Pump;
import org.thumbseal.trend.Crossing;

/**
 * Counts what the history said after each test, with nothing known but what was known then, against
 * the verdicts that came later.
 */
final class Foresight {
  private static final double SOON = 92;

  private int pumps;
  private int tests;
  private int failures;
  private int named;
  private int dates;
  private int datesNever;
  private int pumpsNever;
  private int soon;
  private int soonRight;
  private int soonRightInSix;

  /** After the tests of a day: whether a limit was named, and for when at the earliest. */
  private record Said(Instant at, boolean date, boolean soon) {}

  void take(Life life, List<PastTest> past) {
    pumps++;
    List<PastTest> judged = past.stream().filter(PastTest::judges).toList();
    List<Instant> failed = judged.stream().filter(Foresight::fails).map(Foresight::at).toList();
    List<Said> said = new ArrayList<>();
    for (int i = 0; i < judged.size(); i++) {
      if (isLastOfItsDay(judged, i)) {
        said.add(said(life, past, at(judged.get(i))));
      }
    }
    tests += judged.size();
    failures += failed.size();
    named += (int) failed.stream().filter(f -> isForeseen(f, said)).count();
    said.stream().filter(Said::soon).forEach(s -> countSoon(s.at(), failed));
    long wrong = said.stream().filter(s -> s.date() && isNever(life, s.at(), failed)).count();
    dates += (int) said.stream().filter(Said::date).count();
    datesNever += (int) wrong;
    pumpsNever += wrong > 0 ? 1 : 0;
  }

  private static boolean fails(PastTest test) {
    return test.outcome().verdict().equals("fail");
  }

  private static Instant at(PastTest test) {
    return test.at().orElseThrow();
  }

  private static boolean isLastOfItsDay(List<PastTest> tests, int i) {
    return i + 1 == tests.size()
        || ChronoUnit.HOURS.between(at(tests.get(i)), at(tests.get(i + 1))) > 12;
  }

  private static Said said(Life life, List<PastTest> past, Instant now) {
    History history = History.of(Pump.unlisted(life.card().id()), past, now);
    List<Crossing> crossings =
        history.courses().stream().map(Course::crossing).flatMap(Optional::stream).toList();
    double today = Days.of(now);
    return new Said(
        now, !crossings.isEmpty(), crossings.stream().anyMatch(c -> c.earliest() - today <= SOON));
  }

  private static boolean isForeseen(Instant failure, List<Said> said) {
    return said.stream().anyMatch(s -> s.date() && within(s.at(), failure, SOON));
  }

  private static boolean within(Instant before, Instant after, double days) {
    double gap = Days.of(after) - Days.of(before);
    return gap > 0 && gap <= days;
  }

  private void countSoon(Instant said, List<Instant> failed) {
    soon++;
    soonRight += failed.stream().anyMatch(f -> within(said, f, SOON)) ? 1 : 0;
    soonRightInSix += failed.stream().anyMatch(f -> within(said, f, 2 * SOON)) ? 1 : 0;
  }

  /** Neither did it fail, nor would it have if nobody had done anything. */
  private static boolean isNever(Life life, Instant said, List<Instant> failed) {
    return failed.stream().noneMatch(said::isBefore) && !life.wouldFail(said);
  }

  void add(Foresight other) {
    pumps += other.pumps;
    tests += other.tests;
    failures += other.failures;
    named += other.named;
    dates += other.dates;
    datesNever += other.datesNever;
    pumpsNever += other.pumpsNever;
    soon += other.soon;
    soonRight += other.soonRight;
    soonRightInSix += other.soonRightInSix;
  }

  String line() {
    return String.format(
        Locale.ROOT,
        "%4d %6d %5d %5d | %5d %5d %4d | %5d %5d %5d",
        pumps,
        tests,
        failures,
        named,
        dates,
        datesNever,
        pumpsNever,
        soon,
        soonRight,
        soonRightInSix);
  }
}
