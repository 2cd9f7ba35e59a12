package org.thumbseal.refer;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneId;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.thumbseal.refer.ReferredTest.Looked;
import org.thumbseal.refer.Untried.Step;

/** Which tests are shown, and what was not tried, by hand. */
class ReferralTest {
  private static final Instant NOON = Instant.parse("2026-01-01T12:00:00Z");

  private static ReferredTest test(int day, String verdict, Looked... checks) {
    return new ReferredTest(
        Optional.of(NOON.plusSeconds(86_400L * day)),
        new ReferredTest.Outcome(
            verdict.replace("void ", ""),
            verdict.startsWith("void") ? Optional.of("hose") : Optional.empty(),
            Optional.empty(),
            false),
        new ReferredTest.Seen(List.of(), List.of(checks)),
        Map.of(),
        new Source("file" + day, "d" + day, "kid"));
  }

  private static Looked look(String item, String state) {
    return new Looked(item, state, Optional.empty(), Optional.empty());
  }

  private static Deed deed(String work, String day) {
    return new Deed(
        work,
        LocalDate.parse(day),
        Optional.empty(),
        new Deed.Told(Optional.empty(), List.of(), List.of()),
        new Source(work + day, "d", "kid"));
  }

  private static Referral of(List<ReferredTest> tests, Deed... deeds) {
    return of(ZoneOffset.UTC, tests, deeds);
  }

  private static Referral of(ZoneId zone, List<ReferredTest> tests, Deed... deeds) {
    return new Referral(
        new Referral.Subject("SP-014", List.of(), Optional.empty(), NOON, zone),
        tests,
        List.of(deeds));
  }

  private static List<String> drawn(String... verdicts) {
    List<ReferredTest> tests = new ArrayList<>();
    for (int day = 0; day < verdicts.length; day++) {
      tests.add(test(day, verdicts[day]));
    }
    return of(tests).drawn().stream().map(t -> t.source().file()).toList();
  }

  @Test
  void theLastGoodOneStandsBesideTheLastThatWereNot() {
    assertThat(drawn("pass", "pass", "fail", "inconclusive"))
        .containsExactly("file1", "file2", "file3");
    assertThat(drawn("fail", "pass", "fail", "fail", "fail"))
        .containsExactly("file1", "file2", "file3", "file4");
    assertThat(drawn("fail", "fail", "fail", "fail", "fail"))
        .containsExactly("file1", "file2", "file3", "file4");
    assertThat(drawn("fail", "pass")).containsExactly("file0", "file1");
    assertThat(drawn("pass", "pass", "pass")).containsExactly("file1", "file2");
    assertThat(drawn("pass", "void fail", "invalid")).containsExactly("file0");
    assertThat(drawn("void pass", "invalid")).isEmpty();
    assertThat(drawn()).isEmpty();
  }

  @Test
  void whatWasLookedAtAtTheGoodTestWasNotLookedAtSince() {
    Referral referral =
        of(
            List.of(
                test(0, "pass", look("filter", "ok")),
                test(1, "fail", look("gasket", "replaced"), look("cord", "ok")),
                test(2, "void fail", look("jar", "replaced"))));
    Untried untried = Untried.of(referral);
    assertThat(untried.since()).contains(LocalDate.parse("2026-01-01"));
    assertThat(untried.unseen()).containsExactly("jar", "tubing", "filter", "overflow", "outside");
    assertThat(untried.unreplaced()).containsExactly("jar", "tubing", "filter");
    assertThat(untried.steps())
        .containsExactly(Step.REPEATED, Step.LEAK_SEARCH, Step.TROUBLE_GUIDE);
    assertThat(referral.replaced()).hasSize(1);
    assertThat(referral.lastLooks()).containsOnlyKeys("filter", "gasket", "cord");
  }

  @Test
  void aSearchBeforeTheGoodTestIsNoneSince() {
    List<ReferredTest> tests = List.of(test(10, "pass"), test(20, "fail"), test(21, "fail"));
    Referral referral =
        of(tests, deed("leak-search", "2026-01-10"), deed("trouble-guide", "2026-01-11"));
    assertThat(Untried.of(referral).steps()).containsExactly(Step.LEAK_SEARCH);
    assertThat(Untried.of(of(tests, deed("leak-search", "2026-01-22"))).steps())
        .containsExactly(Step.TROUBLE_GUIDE);
  }

  @Test
  void withoutAGoodTestAllThereIsCounts() {
    Referral referral = of(List.of(), deed("trouble-guide", "2025-01-10"));
    assertThat(Untried.of(referral).since()).isEmpty();
    assertThat(Untried.of(referral).steps()).containsExactly(Step.LEAK_SEARCH);
  }

  @Test
  void daysAreThoseOfThePlace() {
    Referral referral = of(ZoneId.of("Pacific/Auckland"), List.of(test(0, "pass")));
    assertThat(Untried.of(referral).since()).contains(LocalDate.parse("2026-01-02"));
  }

  @Test
  void itIsInfectiousUntilItIsSterilised() {
    Deed clean = deed("sterilisation", "2026-01-05");
    Deed used = deed("infectious-case", "2026-01-04");
    Deed again = deed("infectious-case", "2026-01-06");
    assertThat(of(List.of(), used).infectiousSince()).contains(used.on());
    assertThat(of(List.of(), used, clean).infectiousSince()).isEmpty();
    assertThat(of(List.of(), used, clean, again).infectiousSince()).contains(again.on());
    assertThat(of(List.of(), used, clean, again).lastDeeds()).containsExactly(clean, again);
  }
}
