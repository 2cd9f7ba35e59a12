package org.thumbseal.history;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Duration;
import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.thumbseal.care.CaredFor;
import org.thumbseal.care.Cause;
import org.thumbseal.care.Due;
import org.thumbseal.care.Urgency;
import org.thumbseal.care.Work;

class HistoryTest {
  private static History of(DrawnHistory drawn) {
    return drawn.of("SP-1", "suction pump", "Theatre");
  }

  private static Concern concern(DrawnHistory drawn) {
    return outlook(of(drawn)).concern();
  }

  private static Outlook outlook(History history) {
    return Outlook.of(history, DrawnHistory.dues(history));
  }

  @Test
  void wearNamesItsLimitAndPutsThePumpAmongThoseHeadingThere() {
    DrawnHistory wear = new DrawnHistory(1).months(24, i -> 7 + 0.08 * i);
    Course course = of(wear).course(Kind.RISE_TIME).orElseThrow();

    assertThat(course.worsens()).isTrue();
    assertThat(course.limit().orElseThrow().value()).isEqualTo(10);
    assertThat(course.crossing()).isPresent();
    assertThat(of(wear).soonest()).contains(course);
    assertThat(concern(wear)).isEqualTo(Concern.HEADING);
  }

  @Test
  void aPumpThatFailedHasNoDateAnyMore() {
    DrawnHistory failed = new DrawnHistory(1).months(24, i -> 7 + 0.17 * i);

    assertThat(of(failed).last().orElseThrow().outcome().verdict()).isEqualTo("fail");
    assertThat(of(failed).courses()).noneMatch(c -> c.crossing().isPresent());
    assertThat(concern(failed)).isEqualTo(Concern.FAILED);
  }

  @Test
  void whatIsVoidOrInvalidIsShownAndNotCounted() {
    DrawnHistory drawn = new DrawnHistory(1).months(6, i -> 7 + 0.4 * i);
    assertThat(of(drawn).course(Kind.RISE_TIME).orElseThrow().trend().line()).isPresent();

    History history = of(drawn.voided(2, "hose of another pump"));
    assertThat(history.tests()).hasSize(6);
    assertThat(history.course(Kind.RISE_TIME).orElseThrow().trend().line()).isEmpty();
    assertThat(of(drawn.invalid(5)).last().orElseThrow().id()).isEqualTo("t4");
  }

  @Test
  void aVoidTestIsNoReplacement() {
    DrawnHistory drawn =
        new DrawnHistory(1).months(24, i -> i < 20 ? 7 : 8.4).replaced(20, "filter");
    Course course = of(drawn).course(Kind.RISE_TIME).orElseThrow();
    assertThat(course.trend().steps()).singleElement().matches(step -> step.known());
    assertThat(course.unexplained()).isEmpty();

    Course without = of(drawn.voided(20, "wrong pump")).course(Kind.RISE_TIME).orElseThrow();
    assertThat(without.unexplained()).isPresent();
  }

  @Test
  void anUnexplainedJumpToTheBadIsAConcern() {
    assertThat(concern(new DrawnHistory(3).months(24, i -> i < 20 ? 6.5 : 8.4)))
        .isEqualTo(Concern.JUMPED);
    assertThat(concern(new DrawnHistory(3).months(24, i -> i < 20 ? 8.4 : 6.5)))
        .isEqualTo(Concern.NONE);
  }

  @Test
  void aPumpIsOverdueTheDayAfterItsTestWasDue() {
    DrawnHistory drawn = new DrawnHistory(4).months(12, i -> 7);
    assertThat(concern(drawn)).isEqualTo(Concern.NONE);

    Outlook late = outlook(of(drawn.without(1)));
    assertThat(late.overdueTest().orElseThrow().term().on()).isEqualTo("2026-11-18");
    assertThat(late.concern()).isEqualTo(Concern.OVERDUE);
  }

  @Test
  void theDayItIsDueIsNotTooLate() {
    DrawnHistory drawn =
        new DrawnHistory(4).test(DrawnHistory.TODAY.minus(Duration.ofDays(31)), 7, List.of());

    assertThat(outlook(of(drawn)).overdue()).isEmpty();
    assertThat(concern(drawn)).isEqualTo(Concern.NONE);
  }

  @Test
  void otherWorkThatIsOverdueIsAConcernOnlyWhereTheTestsSayNothing() {
    Due.Term term = new Due.Term(LocalDate.of(2026, 9, 1), Optional.empty(), Cause.TERM);
    Due inspection = new Due(CaredFor.known("SP-1"), Work.YEARLY_INSPECTION, term, Urgency.OVERDUE);
    History well = of(new DrawnHistory(4).months(12, i -> 7));
    History wear = of(new DrawnHistory(1).months(24, i -> 7 + 0.08 * i));

    assertThat(Outlook.of(well, List.of(inspection)).concern()).isEqualTo(Concern.NEGLECTED);
    assertThat(Outlook.of(wear, List.of(inspection)).concern()).isEqualTo(Concern.HEADING);
    assertThat(Outlook.of(wear, List.of(inspection)).overdueWorks()).containsExactly(inspection);
    Pump away = new Pump("SP-1", Optional.empty(), Optional.empty(), false);
    History resting = History.of(away, well.tests(), DrawnHistory.TODAY);
    assertThat(Outlook.of(resting, List.of(inspection)).overdue()).isEmpty();
  }

  @Test
  void ofLongAgoOnlyWhatFollowsFromItIsKept() {
    History history = of(new DrawnHistory(1).months(40, i -> 7 + 0.04 * i));
    assertThat(history.recent().tests()).hasSize(24);
    assertThat(history.recent().courses()).isEqualTo(history.courses());
    assertThat(history.recent().last()).isEqualTo(history.last());

    History rusty =
        of(
            new DrawnHistory(1)
                .test(DrawnHistory.TODAY.minus(Duration.ofDays(1200)), 7, List.of())
                .test(DrawnHistory.TODAY.minus(Duration.ofDays(1100)), 7, List.of()));
    assertThat(rusty.recent().tests()).containsExactly(rusty.last().orElseThrow());
  }

  @Test
  void testsOfLaterDaysAreLeftOut() {
    DrawnHistory drawn =
        new DrawnHistory(4)
            .months(3, i -> 7)
            .test(DrawnHistory.TODAY.plus(Duration.ofDays(2)), 20, List.of());
    assertThat(of(drawn).tests()).hasSize(3);
  }

  @Test
  void theWorstComesFirst() {
    List<Outlook> ordered =
        Outlook.ordered(
            List.of(
                named("well", new DrawnHistory(4).months(12, i -> 7)),
                named("soon", new DrawnHistory(1).months(24, i -> 7 + 0.09 * i)),
                named("late", new DrawnHistory(4).months(12, i -> 7).without(3)),
                named("failed", new DrawnHistory(1).months(24, i -> 7 + 0.17 * i)),
                named("later", new DrawnHistory(1).months(24, i -> 6.3 + 0.08 * i)),
                outlook(History.of(Pump.unlisted("new"), List.of(), DrawnHistory.TODAY))));

    assertThat(ordered)
        .extracting(o -> o.history().pump().id())
        .containsExactly("failed", "new", "late", "soon", "later", "well");
  }

  private static Outlook named(String id, DrawnHistory drawn) {
    return outlook(drawn.of(id, "suction pump", "Theatre"));
  }
}
