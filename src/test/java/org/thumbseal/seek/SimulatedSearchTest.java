package org.thumbseal.seek;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.thumbseal.seek.Conclusion.Verdict;

/** Searches on simulated pumps, through the whole pipeline; the many are in the study. */
class SimulatedSearchTest {
  private static final int SEARCHES = 3;

  private static LeakSearchStudy.Tally tally(int leaking) {
    LeakSearchStudy.Tally tally = new LeakSearchStudy.Tally(leaking);
    for (int seed = 1; seed <= SEARCHES; seed++) {
      SimulatedSearch search = new SimulatedSearch(leaking, seed, 50);
      tally.add(search.run(), search.leak());
    }
    return tally;
  }

  @ParameterizedTest
  @ValueSource(ints = {0, 1, 2, 3})
  void theSectionThatLeaksIsNamed(int leaking) {
    LeakSearchStudy.Tally tally = tally(leaking);
    assertThat(tally.right()).as(tally.row(SEARCHES)).isEqualTo(SEARCHES);
  }

  @Test
  void aWornPumpIsNotTakenForALeak() {
    SearchState state = new SimulatedSearch(SimulatedSearch.WORN_PUMP, 1, 50).run();
    assertThat(state.next()).isEqualTo(new Step.Stop(Conclusion.none(Verdict.PUMP_WEAK)));
  }

  @Test
  void whereNothingLeaksNothingIsNamed() {
    LeakSearchStudy.Tally tally = tally(SimulatedSearch.NONE);
    assertThat(tally.right() + tally.wrong()).as(tally.row(SEARCHES)).isZero();
  }
}
