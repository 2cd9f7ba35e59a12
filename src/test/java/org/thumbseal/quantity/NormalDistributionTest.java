package org.thumbseal.quantity;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class NormalDistributionTest {
  /** Coverage of k standard uncertainties, normal distribution (JCGM 100:2008 table G.1). */
  @ParameterizedTest
  @CsvSource({
    "1, 68.27",
    "1.645, 90",
    "1.960, 95",
    "2, 95.45",
    "2.576, 99",
    "3, 99.73",
  })
  void coverageFactorsOfTheGuide(double k, double percent) {
    double inside = NormalDistribution.cumulative(k) - NormalDistribution.cumulative(-k);
    assertThat(100 * inside).isCloseTo(percent, within(0.011));
  }

  /** The factor of this program's expanded uncertainties. */
  @Test
  void expandedUncertaintiesCoverAboutNinetyFivePercent() {
    double k = new Quantity(0, "s", 1).expandedUncertainty();
    assertThat(2 * NormalDistribution.cumulative(k) - 1).isCloseTo(0.9545, within(0.000_05));
  }

  /** One-sided quantiles of the normal distribution, handbook values (from memory). */
  @ParameterizedTest
  @CsvSource({"1.6449, 0.95", "1.9600, 0.975", "2.3263, 0.99", "2.5758, 0.995", "0, 0.5"})
  void quantiles(double z, double probability) {
    assertThat(NormalDistribution.cumulative(z)).isCloseTo(probability, within(0.000_01));
    assertThat(NormalDistribution.cumulative(-z)).isCloseTo(1 - probability, within(0.000_01));
  }

  /** Phi(-6) = 9.865 876 45e-10, computed apart with 40 digits. */
  @Test
  void theTailsAreRight() {
    assertThat(NormalDistribution.cumulative(-6)).isCloseTo(9.865_876_45e-10, within(1e-15));
    assertThat(NormalDistribution.cumulative(-9)).isZero();
    assertThat(NormalDistribution.cumulative(9)).isEqualTo(1);
    assertThat(NormalDistribution.cumulative(8)).isCloseTo(1, within(2e-15));
  }

  /** scipy 1.17.1, stats.norm.ppf; 1.959964 is in every table. */
  @ParameterizedTest
  @CsvSource({
    "0.5, 0",
    "0.9, 1.2815515655446004",
    "0.95, 1.6448536269514722",
    "0.975, 1.959963984540054",
    "0.995, 2.5758293035489004",
    "0.001, -3.090232306167813",
  })
  void theQuantileIsThatOfTheTables(double share, double z) {
    assertThat(NormalDistribution.quantile(share)).isCloseTo(z, within(1e-11));
  }

  @ParameterizedTest
  @ValueSource(doubles = {0, 1, -0.1, Double.NaN})
  void aQuantileIsOfAShare(double share) {
    assertThatThrownBy(() -> NormalDistribution.quantile(share))
        .isInstanceOf(IllegalArgumentException.class);
  }
}
