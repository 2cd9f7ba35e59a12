package org.thumbseal.spares;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.SplittableRandom;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;
import org.thumbseal.spares.Outlook.State;
import org.thumbseal.spares.StockLine.Count;
import org.thumbseal.spares.StockLine.Supply;

/** What is left, by when to order and how many. */
class ForecastTest {
  private static final LocalDate TODAY = LocalDate.of(2026, 3, 31);
  private static final LocalDate FIRST = LocalDate.of(2025, 4, 1);

  private static StockLine line(String part, String item, int quantity, Supply supply) {
    Count count = new Count(quantity, TODAY.minusDays(10));
    return new StockLine(part, item, count, supply, Optional.empty(), Map.of());
  }

  private static Use use(int daysAgo, String item, @Nullable String part) {
    return new Use(TODAY.minusDays(daysAgo), item, Optional.ofNullable(part), true);
  }

  private static Stock forecast(List<StockLine> lines, List<Use> uses) {
    return new Forecast(TODAY, Optional.of(FIRST), 91).of(lines, uses);
  }

  @Test
  void orderByIsTheLastDayAndAnOrderIsEnough() {
    SplittableRandom random = new SplittableRandom(6);
    for (int trial = 0; trial < 300; trial++) {
      Supply supply =
          new Supply(
              random.nextInt(6), random.nextInt(80), 1 + random.nextInt(10), random.nextInt(4));
      List<Use> uses = new ArrayList<>();
      for (int i = random.nextInt(40); i > 0; i--) {
        uses.add(use(11 + random.nextInt(350), "filter", null));
      }
      Outlook part =
          forecast(List.of(line("F", "filter", random.nextInt(30), supply)), uses).parts().get(0);
      check(part, "seed 6, trial " + trial);
    }
  }

  private static void check(Outlook part, String name) {
    Demand demand = part.demand().orElseThrow();
    Supply supply = part.line().supply();
    int spare = part.stock().now() + supply.onOrder() - supply.minimum();
    Optional<LocalDate> by = part.orderBy();
    boolean now = by.filter(d -> !d.isAfter(TODAY)).isPresent();
    assertThat(part.amount() > 0).as(name).isEqualTo(now);
    assertThat(part.amount() % supply.pack()).as(name).isZero();
    if (now) {
      int needed = demand.atMost(supply.leadDays() + 91, 0.95);
      assertThat(spare + part.amount()).as(name).isBetween(needed, needed + supply.pack() - 1);
    }
    if (spare >= 0 && by.isPresent()) {
      int arrival = (int) (by.get().toEpochDay() - TODAY.toEpochDay()) + supply.leadDays();
      assertThat(demand.atMost(arrival, 0.95)).as(name).isLessThanOrEqualTo(spare);
      assertThat(demand.atMost(arrival + 1, 0.95)).as(name).isGreaterThan(spare);
    }
  }

  @Test
  void countsWhatWasUsedSinceTheCountAndNoMore() {
    StockLine line = line("F", "filter", 5, new Supply(1, 14, 1, 0));
    List<Use> uses =
        List.of(
            use(11, "filter", null),
            use(10, "filter", null),
            use(9, "filter", null),
            use(0, "filter", null),
            use(-1, "filter", null));
    Outlook part = forecast(List.of(line), uses).parts().get(0);
    assertThat(part.stock()).isEqualTo(new Outlook.Left(3, 2, false));
    assertThat(part.demand()).contains(new CountedDemand(4, 365));
  }

  @Test
  void moreUsedThanCountedIsSaid() {
    StockLine line = line("F", "filter", 1, new Supply(1, 14, 1, 0));
    List<Use> uses = List.of(use(2, "filter", null), use(1, "filter", null));
    Outlook part = forecast(List.of(line), uses).parts().get(0);
    assertThat(part.stock()).isEqualTo(new Outlook.Left(0, 2, true));
    assertThat(part.state()).isEqualTo(State.BELOW_MINIMUM);
  }

  @Test
  void aNameGoesBeforeTheItemAndAGuessIsNotMade() {
    Supply supply = new Supply(0, 14, 1, 0);
    List<StockLine> lines =
        List.of(
            line("Gasket 2 L", "gasket", 9, supply),
            line("Gasket 1 L", "gasket", 9, supply),
            line("Filter", "filter", 9, supply));
    List<Use> uses =
        List.of(
            use(1, "gasket", " gasket  2 l"),
            use(1, "gasket", "other"),
            use(1, "gasket", null),
            use(1, "filter", "blue one"),
            use(1, "cord", null));
    Stock stock = forecast(lines, uses);
    assertThat(stock.parts()).extracting(p -> p.stock().used()).containsExactly(1, 0, 1);
    assertThat(stock.unclear()).extracting(Use::item).containsExactly("gasket", "gasket", "cord");
  }

  @Test
  void retiredPumpsEmptyTheShelfButForetellNothing() {
    StockLine line = line("F", "filter", 5, new Supply(1, 14, 1, 0));
    Use old = new Use(TODAY, "filter", Optional.empty(), false);
    Outlook part = forecast(List.of(line), List.of(old)).parts().get(0);
    assertThat(part.stock().now()).isEqualTo(4);
    assertThat(part.demand()).contains(new CountedDemand(0, 365));
  }

  @Test
  void observationGoesBackTwoYearsAtMost() {
    Forecast forecast = new Forecast(TODAY, Optional.of(TODAY.minusYears(5)), 91);
    StockLine line = line("F", "filter", 5, new Supply(1, 14, 1, 0));
    List<Use> uses = List.of(use(729, "filter", null), use(730, "filter", null));
    Outlook part = forecast.of(List.of(line), uses).parts().get(0);
    assertThat(part.demand()).contains(new CountedDemand(1, 730));
  }

  @Test
  void whatNoCheckRecordsIsNotTakenForUnused() {
    StockLine unsaid = line("Catheter", "catheter", 50, new Supply(20, 14, 10, 0));
    Outlook part = forecast(List.of(unsaid), List.of()).parts().get(0);
    assertThat(part.state()).isEqualTo(State.USE_UNKNOWN);
    StockLine said =
        new StockLine(
            "C", "catheter", unsaid.count(), unsaid.supply(), Optional.of(60.0), Map.of());
    Outlook estimated = forecast(List.of(said), List.of()).parts().get(0);
    assertThat(estimated.stock().now()).isEqualTo(30);
    assertThat(estimated.state()).isEqualTo(State.ORDER_NOW);
  }

  @Test
  void withoutTestsTheMinimumDecides() {
    StockLine line = line("F", "filter", 1, new Supply(4, 14, 5, 0));
    Outlook part =
        new Forecast(TODAY, Optional.empty(), 91).of(List.of(line), List.of()).parts().get(0);
    assertThat(part.demand()).isEmpty();
    assertThat(part.amount()).isEqualTo(5);
  }

  @Test
  void whatIsOnOrderIsNotOrderedAgain() {
    StockLine line = line("F", "filter", 1, new Supply(4, 14, 5, 20));
    Outlook part = forecast(List.of(line), List.of()).parts().get(0);
    assertThat(part.state()).isEqualTo(State.BELOW_MINIMUM);
    assertThat(part.amount()).isZero();
  }
}
