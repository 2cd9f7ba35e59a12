package org.thumbseal.spares;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** The interval of a Poisson mean, and the limit of the use to come. */
class CountedDemandTest {
  /** 95 % limits as handbooks tabulate them after Garwood (1936); values from memory. */
  @ParameterizedTest
  @CsvSource({"0, 0, 3.69", "1, 0.025, 5.57", "5, 1.62, 11.67", "10, 4.80, 18.39"})
  void intervalIsThatOfTheTables(int count, double low, double high) {
    Demand.Interval interval = CountedDemand.garwood(count);
    assertThat(interval.low()).isCloseTo(low, within(count == 1 ? 0.0005 : 0.005));
    assertThat(interval.high()).isCloseTo(high, within(0.005));
  }

  /** At its limits, a count as extreme as this one has a probability of 2.5 %. */
  @Test
  void intervalLeavesTwoAndAHalfPercentOnEachSide() {
    for (int count = 1; count < 40; count++) {
      Demand.Interval interval = CountedDemand.garwood(count);
      assertThat(1 - poisson(count - 1, interval.low())).isCloseTo(0.025, within(1e-9));
      assertThat(poisson(count, interval.high())).isCloseTo(0.025, within(1e-9));
    }
  }

  private static double poisson(int most, double mean) {
    double term = Math.exp(-mean);
    double sum = term;
    for (int i = 1; i <= most; i++) {
      term *= mean / i;
      sum += term;
    }
    return sum;
  }

  /** Term by term: later uses before the (n + 1)th earlier one. */
  @ParameterizedTest
  @CsvSource({"0, 730, 14", "3, 365, 42", "12, 730, 60", "40, 100, 100", "2, 5, 60"})
  void limitIsTheQuantileOfTheNegativeBinomial(int uses, int days, int ahead) {
    double p = days / (double) (days + ahead);
    double term = Math.pow(p, uses + 1);
    double sum = term;
    int least = 0;
    while (sum < 0.95) {
      least++;
      term *= (1 - p) * (uses + least) / least;
      sum += term;
    }
    assertThat(new CountedDemand(uses, days).atMost(ahead, 0.95)).isEqualTo(least);
    assertThat(new CountedDemand(uses, days).cumulative(least, ahead)).isCloseTo(sum, within(1e-9));
  }

  /**
   * Whatever the rate, use keeps within the limit with at least 95 %; and it is not merely wide.
   */
  @ParameterizedTest
  @CsvSource({"0.5, 0.05", "2, 0.2", "10, 1", "30, 3", "30, 12", "5, 5"})
  void useKeepsWithinTheLimitWhateverTheRate(double meanBefore, double meanAfter) {
    SplittableRandom random = new SplittableRandom(8);
    int trials = 20_000;
    int ahead = (int) Math.round(600 * meanAfter / meanBefore);
    int kept = 0;
    for (int i = 0; i < trials; i++) {
      int uses = draw(random, meanBefore);
      int later = draw(random, meanAfter);
      kept += later <= new CountedDemand(uses, 600).atMost(ahead, 0.95) ? 1 : 0;
    }
    double deviation = Math.sqrt(0.95 * 0.05 / trials);
    assertThat(kept / (double) trials).as("seed 8").isGreaterThan(0.95 - 3 * deviation);
    if (meanAfter >= 3) {
      assertThat(kept / (double) trials).as("seed 8").isLessThan(0.99);
    }
  }

  private static int draw(SplittableRandom random, double mean) {
    double limit = Math.exp(-mean);
    double product = random.nextDouble();
    int count = 0;
    while (product > limit) {
      product *= random.nextDouble();
      count++;
    }
    return count;
  }

  @ParameterizedTest
  @CsvSource({"0, 10", "1, 30.4375", "3, 30", "90, 14", "90, 400"})
  void anEstimateIsPoisson(double perMonth, double days) {
    double mean = perMonth * (int) days / Demand.MONTH;
    int most = new SaidDemand(perMonth).atMost((int) days, 0.95);
    if (mean < 600) {
      assertThat(poisson(most, mean)).isGreaterThanOrEqualTo(0.95);
      assertThat(most == 0 ? 0 : poisson(most - 1, mean)).isLessThan(0.95);
    } else {
      // Normal approximation with correction for continuity.
      assertThat(most).isCloseTo((int) Math.round(mean + 1.645 * Math.sqrt(mean)), within(2));
    }
  }
}
