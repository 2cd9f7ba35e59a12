package org.thumbseal.cli;

import java.time.LocalDate;
import java.time.ZoneId;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import org.thumbseal.care.Work;
import org.thumbseal.index.IndexedTest;
import org.thumbseal.index.IndexedWork;

/** From which tests on a pump is another one, because it came back from repair before them. */
record Repairs(List<IndexedWork> works) {
  /**
   * Ids of the first test after each repair. People say the day of a repair, not the hour: a test
   * that failed on that day was before it.
   *
   * @param tests of the pump, in the order of time
   */
  Set<String> testedAfter(List<IndexedTest> tests) {
    Set<String> ids = new HashSet<>();
    for (IndexedWork work : works) {
      if (work.work().equals(Work.REPAIR.code())) {
        tests.stream()
            .filter(test -> isAfter(test, work.on()))
            .findFirst()
            .ifPresent(test -> ids.add(test.id()));
      }
    }
    return ids;
  }

  private static boolean isAfter(IndexedTest test, LocalDate repaired) {
    boolean counts = test.standing().voided().isEmpty() && !test.verdict().equals("invalid");
    return counts
        && test.startedAt()
            .map(at -> at.atZone(ZoneId.systemDefault()).toLocalDate())
            .filter(
                day ->
                    day.isAfter(repaired)
                        || (day.equals(repaired) && !test.verdict().equals("fail")))
            .isPresent();
  }
}
