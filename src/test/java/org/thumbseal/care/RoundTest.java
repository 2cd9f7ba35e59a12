package org.thumbseal.care;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Optional;
import java.util.Random;
import org.junit.jupiter.api.Test;

class RoundTest {
  private static final LocalDate TODAY = LocalDate.parse("2026-03-16");

  private static CaredFor pump(String id, String location) {
    return new CaredFor(id, "", location, new CaredFor.Terms(Optional.empty(), Intervals.DEFAULT));
  }

  private static Round round(Urgency upTo, CaredFor... pumps) {
    Deed tested = new Deed("SP-2", Work.OCCLUSION_TEST, TODAY, Deed.Outcome.IN_ORDER);
    return Round.of(Dues.of(List.of(pumps), List.of(tested), TODAY), upTo);
  }

  @Test
  void goesFromPlaceToPlaceAsPeopleCount() {
    Round round =
        round(
            Urgency.THIS_MONTH,
            pump("SP-10", "Ward 10"),
            pump("SP-9", ""),
            pump("SP-12", "Ward 2"),
            pump("SP-2", "Ward 2"));
    assertThat(round.stops())
        .extracting(Round.Stop::location)
        .containsExactly("Ward 2", "Ward 10", "");
    assertThat(round.stops().get(0).pumps())
        .extracting(visited -> visited.pump().id())
        .containsExactly("SP-2", "SP-12");
  }

  @Test
  void leavesOutWhatCanWaitAndCountsIt() {
    Round round = round(Urgency.THIS_MONTH, pump("SP-2", "Ward 2"));
    assertThat(round.stops().get(0).pumps().get(0).dues())
        .extracting(Due::work)
        .containsExactly(Work.YEARLY_INSPECTION, Work.STERILISATION);
    assertThat(round.count(Urgency.OVERDUE)).isEqualTo(2);
    assertThat(round.count(Urgency.LATER)).isEqualTo(1);
    assertThat(round.count(Urgency.THIS_WEEK)).isZero();
  }

  @Test
  void theOrderIsOneHoweverTheNamesComeIn() {
    List<String> sorted =
        List.of("", "1", "01", "2", "10", "a", "A1", "a2", "a10", "a10b", "B", "Ward 2", "Ward 10");
    List<String> names = new ArrayList<>(sorted);
    names.sort(NaturalOrder.EMPTY_LAST);
    List<String> first = List.copyOf(names);
    assertThat(first).endsWith("");
    assertThat(first.indexOf("2")).isLessThan(first.indexOf("10"));
    assertThat(first.indexOf("a2")).isLessThan(first.indexOf("a10"));
    for (int seed = 0; seed < 50; seed++) {
      Collections.shuffle(names, new Random(seed));
      names.sort(NaturalOrder.EMPTY_LAST);
      assertThat(names).as("seed %d", seed).isEqualTo(first);
    }
  }
}
