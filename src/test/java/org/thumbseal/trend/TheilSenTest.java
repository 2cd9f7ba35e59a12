package org.thumbseal.trend;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.thumbseal.trend.KendallTest.points;

import java.util.List;
import java.util.Random;
import java.util.stream.IntStream;
import org.assertj.core.data.Offset;
import org.junit.jupiter.api.Test;

class TheilSenTest {
  private static final Offset<Double> EXACT = within(1e-12);

  /** Data of Sen (1968), section 6, as the tests of R's package deming give them: slope 4, 6. */
  private static final Points SEN =
      points(new double[] {1, 2, 3, 4, 10, 12, 18}, new double[] {9, 15, 19, 20, 45, 55, 78});

  @Test
  void theLineOfSensExampleIsHis() {
    TheilSen line = TheilSen.of(SEN, 0.93);

    assertThat(line.slope()).isEqualTo(4);
    assertThat(SEN.level(4)).isEqualTo(6);
  }

  /**
   * Exact distribution, so not (26/7, 35/8), which the normal one gives for 93 % (deming, scipy):
   * P(S >= 13) = 0.0345 for 7 values, so C = 11, and the interval goes from the 5th to the 17th of
   * the 21 slopes (Hollander and Wolfe 9.4).
   */
  @Test
  void theIntervalOfSensExampleIsFromTheExactDistribution() {
    TheilSen line = TheilSen.of(SEN, 0.93);

    assertThat(line.low()).isCloseTo(3.75, EXACT);
    assertThat(line.high()).isCloseTo(46.0 / 11, EXACT);
  }

  /**
   * Hollander and Wolfe, example 9.1 (rain from seeded clouds; data and slope from memory): slope
   * -0.056. With 5 values P(S >= 10) = 1/120, so C = 8, and the interval of 98.3 % goes from the
   * first to the tenth of the ten slopes.
   */
  @Test
  void theExampleOfSeededClouds() {
    TheilSen line =
        TheilSen.of(
            points(new double[] {1, 2, 3, 4, 5}, new double[] {1.26, 1.27, 1.12, 1.16, 1.03}),
            1 - 2.0 / 120);

    assertThat(line.slope()).isCloseTo(-0.056, within(0.0005));
    assertThat(line.low()).isCloseTo(-0.15, EXACT);
    assertThat(line.high()).isCloseTo(0.04, EXACT);
  }

  /** scipy 1.17.1, stats.theilslopes(y, x, 0.95, method="joint"). */
  @Test
  void largerSamplesAreThoseOfTheReferenceLibrary() {
    Points rising = points(KendallTest.DAYS, KendallTest.RISING);
    TheilSen line = TheilSen.of(rising, 0.95);
    assertThat(line.slope()).isCloseTo(0.0032577932731747334, EXACT);
    assertThat(rising.level(line.slope())).isCloseTo(7.184673913043478, within(1e-9));
    assertThat(line.low()).isCloseTo(0.0005691056910569128, EXACT);
    assertThat(line.high()).isCloseTo(0.0050276243093922614, EXACT);

    TheilSen tied = TheilSen.of(points(KendallTest.DAYS, KendallTest.TIED), 0.95);
    assertThat(tied.slope()).isZero();
    assertThat(tied.low()).isZero();
    assertThat(tied.high()).isCloseTo(0.0047169811320754715, EXACT);
  }

  /** All 5040 orders of 7 errors: the interval holds the true slope as often as it says. */
  @Test
  void theExactIntervalHoldsTheTruthAsOftenAsItSays() {
    double[] days = {0, 1, 3, 4, 8, 9, 11};
    int held = 0;
    for (List<Integer> order : KendallTest.orders(7)) {
      double[] values = IntStream.range(0, 7).mapToDouble(i -> 5 * days[i] + e(order, i)).toArray();
      TheilSen line = TheilSen.of(points(days, values), 0.93);
      held += line.low() < 5 && 5 < line.high() ? 1 : 0;
    }
    assertThat(held / 5040.0).isCloseTo(1 - 2 * 0.0345, within(0.0005));
  }

  /** Errors of very different size, so that no two pairs have the same slope. */
  private static double e(List<Integer> order, int i) {
    return Math.exp(1.7 * order.get(i));
  }

  @Test
  void theIntervalOfLargerSamplesHoldsTheTruthAsOftenAsItSays() {
    Random random = new Random(11);
    int held = 0;
    for (int trial = 0; trial < 2000; trial++) {
      double[] days = IntStream.range(0, 18).mapToDouble(i -> 30 * i).toArray();
      double[] values =
          IntStream.range(0, 18).mapToDouble(i -> 0.01 * days[i] + random.nextGaussian()).toArray();
      TheilSen line = TheilSen.of(points(days, values), 0.95);
      held += line.low() <= 0.01 && 0.01 <= line.high() ? 1 : 0;
    }
    // 95 % of 2000 have a standard deviation of 0.5 %.
    assertThat(held / 2000.0).isBetween(0.935, 0.97);
  }

  @Test
  void oneBadValueInSixDoesNotMoveTheLine() {
    double[] days = IntStream.range(0, 12).mapToDouble(i -> 30 * i).toArray();
    double[] values = IntStream.range(0, 12).mapToDouble(i -> 7 + 0.1 * i).toArray();
    values[4] = 60;
    values[9] = 1;
    assertThat(TheilSen.of(points(days, values), 0.95).slope()).isCloseTo(0.1 / 30, EXACT);
  }
}
