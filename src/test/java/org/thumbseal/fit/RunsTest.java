package org.thumbseal.fit;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;

class RunsTest {
  private static FitResult of(double... residuals) {
    return new FitResult(new double[] {0}, new double[][] {{1}}, residuals);
  }

  /**
   * Wald and Wolfowitz 1940, by hand: four of each sign have 5 runs in the mean, with variance
   * 2*16*(32-8)/(64*7).
   */
  @Test
  void countsRunsAgainstChance() {
    double deviation = Math.sqrt(2 * 16 * 24 / (64.0 * 7));
    assertThat(of(1, 2, -1, -2, 1, 1, -3, -1).runsDeviation())
        .isCloseTo((4 - 5) / deviation, within(1e-12));
    assertThat(of(1, -2, 1, -2, 1, -1, 3, -1).runsDeviation())
        .isCloseTo((8 - 5) / deviation, within(1e-12));
  }

  @Test
  void oneSignTellsNothing() {
    assertThat(of(1, 2, 3).runsDeviation()).isZero();
  }
}
