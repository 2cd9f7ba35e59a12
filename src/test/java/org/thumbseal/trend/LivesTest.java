package org.thumbseal.trend;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;

/** A pump whose filter clogs and is replaced again and again. */
class LivesTest {
  private static final double MONTH = 30.4375;
  private static final double SCATTER = 0.15;

  /** Visits of a month each; a new filter after every so many, the present one has seen a few. */
  private record Saw(int lives, int visits, double perMonth, int present, double now) {
    Series drawn(Random random) {
      List<Reading> readings = new ArrayList<>();
      List<Double> changes = new ArrayList<>();
      for (int i = 0; i < lives * visits + present; i++) {
        double slope = i < lives * visits ? perMonth : now;
        double value = 6 + slope * (i % visits) + SCATTER * random.nextGaussian();
        readings.add(new Reading(MONTH * i, value, "s"));
        if (i > 0 && i % visits == 0) {
          changes.add(MONTH * i - 1);
        }
      }
      return new Series(readings, changes);
    }
  }

  private static Trend trend(Saw saw, long seed) {
    return Trend.of(saw.drawn(new Random(seed)), TrendRules.USUAL);
  }

  @Test
  void eachReplacementOfASawIsSeen() {
    Trend trend = trend(new Saw(4, 6, 0.6, 5, 0.6), 11);

    assertThat(trend.steps()).hasSize(4).allMatch(Step::known);
  }

  @Test
  void theThirdVisitOfAnotherLifeTellsWhatTheFirstCouldNot() {
    assertThat(trend(new Saw(0, 6, 0.6, 5, 0.6), 12).line()).isEmpty();

    assertThat(trend(new Saw(2, 6, 0.6, 3, 0.6), 12).line())
        .hasValueSatisfying(line -> assertThat(line.slope().value() * MONTH).isBetween(0.3, 0.9));
  }

  /** Stated: 5 %, both ways, of three looks together; the first of them has a third of it. */
  @Test
  void aLifeWithoutATrendIsSeldomTakenForOne() {
    int taken = 0;
    for (int seed = 0; seed < 1000; seed++) {
      taken += trend(new Saw(3, 6, 0.6, 3, 0), seed).line().isPresent() ? 1 : 0;
    }

    assertThat(taken).isBetween(1, 40);
  }
}
