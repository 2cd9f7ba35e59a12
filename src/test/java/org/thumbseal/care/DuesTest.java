package org.thumbseal.care;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.thumbseal.care.Deed.Outcome;

/** Terms as a calendar has them; the intervals are common practice, no published source. */
class DuesTest {
  private static final LocalDate TODAY = LocalDate.parse("2026-03-16");
  private static final CaredFor PUMP = CaredFor.known("SP-1");

  private static Deed deed(Work work, String on, Outcome outcome) {
    return new Deed("SP-1", work, LocalDate.parse(on), outcome);
  }

  private static Deed done(Work work, String on) {
    return deed(work, on, Outcome.IN_ORDER);
  }

  private static Due due(CaredFor pump, Work work, Deed... deeds) {
    return Dues.of(List.of(pump), List.of(deeds), TODAY).stream()
        .filter(due -> due.work() == work)
        .findFirst()
        .orElseThrow();
  }

  private static Due test(Deed... deeds) {
    return due(PUMP, Work.OCCLUSION_TEST, deeds);
  }

  @ParameterizedTest
  @CsvSource({
    "2026-03-16, 2026-04-16, LATER",
    "2026-03-15, 2026-04-15, THIS_MONTH",
    "2026-02-23, 2026-03-23, THIS_MONTH",
    "2026-02-22, 2026-03-22, THIS_WEEK",
    "2026-02-16, 2026-03-16, THIS_WEEK",
    "2026-02-15, 2026-03-15, OVERDUE",
    "2026-01-31, 2026-02-28, OVERDUE",
  })
  void aMonthLater(String last, LocalDate on, Urgency urgency) {
    Due due = test(done(Work.OCCLUSION_TEST, last));
    assertThat(due.term().on()).isEqualTo(on);
    assertThat(due.urgency()).isEqualTo(urgency);
    assertThat(due.term().cause()).isEqualTo(Cause.TERM);
    assertThat(due.term().last()).contains(LocalDate.parse(last));
  }

  @Test
  void whatWasNeverDoneIsOverdue() {
    List<Due> dues = Dues.of(List.of(PUMP), List.of(), TODAY);
    assertThat(dues)
        .extracting(Due::work)
        .containsExactly(Work.OCCLUSION_TEST, Work.YEARLY_INSPECTION, Work.STERILISATION);
    assertThat(dues).allMatch(due -> due.urgency() == Urgency.OVERDUE);
    assertThat(dues).allMatch(due -> due.term().cause() == Cause.NEVER_DONE);
  }

  @Test
  void aNewPumpIsDueOnItsFirstDay() {
    var terms = new CaredFor.Terms(Optional.of(TODAY.plusDays(3)), Intervals.DEFAULT);
    Due due = due(new CaredFor("SP-1", "", "", terms), Work.OCCLUSION_TEST);
    assertThat(due.term().on()).isEqualTo(TODAY.plusDays(3));
    assertThat(due.urgency()).isEqualTo(Urgency.THIS_WEEK);
  }

  @Test
  void ofSeveralTheLastCounts() {
    Due due =
        test(done(Work.OCCLUSION_TEST, "2026-03-10"), done(Work.OCCLUSION_TEST, "2026-01-10"));
    assertThat(due.term().on()).isEqualTo("2026-04-10");
  }

  @Test
  void aFailedTestStaysDueUntilOneIsPassed() {
    Deed failed = deed(Work.OCCLUSION_TEST, "2026-03-10", Outcome.NOT_IN_ORDER);
    assertThat(test(done(Work.OCCLUSION_TEST, "2026-03-01"), failed).term())
        .isEqualTo(new Due.Term(failed.on(), Optional.of(failed.on()), Cause.NOT_IN_ORDER));
    assertThat(test(failed, done(Work.OCCLUSION_TEST, "2026-03-12")).term().cause())
        .isEqualTo(Cause.TERM);
  }

  @Test
  void anUndecidedTestCountsForNothing() {
    Deed invalid = deed(Work.OCCLUSION_TEST, "2026-03-10", Outcome.UNDECIDED);
    Due due = test(done(Work.OCCLUSION_TEST, "2026-03-01"), invalid);
    assertThat(due.term())
        .isEqualTo(
            new Due.Term(
                invalid.on(), Optional.of(LocalDate.parse("2026-03-01")), Cause.UNDECIDED));
    assertThat(due.urgency()).isEqualTo(Urgency.OVERDUE);
    Due late = test(done(Work.OCCLUSION_TEST, "2026-01-01"), invalid);
    assertThat(late.term().on()).isEqualTo("2026-02-01");
  }

  @Test
  void anUndecidedTestDoesNotHideAFailedOne() {
    Deed failed = deed(Work.OCCLUSION_TEST, "2026-03-01", Outcome.NOT_IN_ORDER);
    Due due = test(failed, deed(Work.OCCLUSION_TEST, "2026-03-10", Outcome.UNDECIDED));
    assertThat(due.term().cause()).isEqualTo(Cause.NOT_IN_ORDER);
  }

  @Test
  void aRepairedPumpIsTestedBeforeItsMonthIsOver() {
    Deed passed = done(Work.OCCLUSION_TEST, "2026-03-01");
    Due due = test(passed, done(Work.REPAIR, "2026-03-11"));
    assertThat(due.term().on()).isEqualTo("2026-03-11");
    assertThat(due.term().cause()).isEqualTo(Cause.AFTER_REPAIR);
    Deed again = done(Work.OCCLUSION_TEST, "2026-03-11");
    assertThat(test(passed, done(Work.REPAIR, "2026-03-11"), again).term().cause())
        .isEqualTo(Cause.TERM);
  }

  @Test
  void anInfectiousCaseWaitsForNoMonth() {
    Deed sterilised = done(Work.STERILISATION, "2026-03-01");
    Deed infected = done(Work.INFECTIOUS_CASE, "2026-03-15");
    Due due = due(PUMP, Work.STERILISATION, sterilised, infected);
    assertThat(due.term().on()).isEqualTo("2026-03-15");
    assertThat(due.term().cause()).isEqualTo(Cause.AFTER_INFECTIOUS_CASE);
  }

  @Test
  void whereJarsAreUsedOnceOnlyAnInfectiousCaseCalls() {
    var terms = new CaredFor.Terms(Optional.empty(), new Intervals(1, 12, 0));
    CaredFor pump = new CaredFor("SP-1", "", "", terms);
    assertThat(Dues.of(List.of(pump), List.of(), TODAY))
        .noneMatch(due -> due.work() == Work.STERILISATION);
    Deed infected = done(Work.INFECTIOUS_CASE, "2026-03-15");
    assertThat(due(pump, Work.STERILISATION, infected).term().cause())
        .isEqualTo(Cause.AFTER_INFECTIOUS_CASE);
  }

  @Test
  void aDeedOfTomorrowDoesNotCount() {
    assertThat(test(done(Work.OCCLUSION_TEST, "2026-03-17")).term().cause())
        .isEqualTo(Cause.NEVER_DONE);
  }
}
