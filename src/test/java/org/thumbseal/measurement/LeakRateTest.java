package org.thumbseal.measurement;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.thumbseal.quantity.StandardAtmosphere;

class LeakRateTest {
  private static final double STANDARD = 101.325;

  /**
   * Source: 40 CFR 1065.644, worked example of a vacuum-decay leak check: 2.0000 L, from 25.300 to
   * 50.600 kPa in 70 s, 293.15 K at both ends; 0.4280 L/min at 101.325 kPa.
   */
  @Test
  void vacuumDecayExample() {
    double rate = (50.600 - 25.300) / 70;
    assertThat(LeakRate.millilitresPerMinute(rate, 2.0000, STANDARD))
        .isCloseTo(428.0, within(0.05));
  }

  /** The same readings through the fit: it allows for what the gas may have warmed meanwhile. */
  @Test
  void vacuumDecayExampleThroughTheFit() {
    Curve readings = Drawn.noisy(70, 20, t -> STANDARD - 25.3 - 25.3 / 70 * t, 0.05, 1);
    DecayFit fit =
        DecayFit.of(readings, new DecayFit.Around(STANDARD, Optional.of(2.0))).orElseThrow();
    double unit = LeakRate.millilitresPerMinute(1, 2, STANDARD);

    assertThat(fit.rate() * unit).isCloseTo(428.0, within(0.015 * 428));
    assertThat(fit.rate() * unit)
        .isCloseTo(428.0, within(2 * unit * Math.hypot(fit.fitError(), fit.warmingError())));
  }

  /** Computed from Q = V dp/dt: 0.1 L/min of ambient air is 0.16888 Pa m3/s. */
  @ParameterizedTest
  @CsvSource({"1, 0.1689", "2, 0.0844", "4, 0.0422"})
  void aTenthOfALitreAMinute(double litres, double kilopascalsPerSecond) {
    assertThat(LeakRate.millilitresPerMinute(kilopascalsPerSecond, litres, STANDARD))
        .isCloseTo(100, within(100 * 0.00005 / kilopascalsPerSecond));
  }

  /** (2/2.4)^3.5, the critical ratio of air (leak pages of vacuum handbooks). */
  @Test
  void criticalRatio() {
    assertThat(LeakRate.CRITICAL_RATIO).isCloseTo(0.528282, within(5e-7));
  }

  /** Computed from that ratio and the US Standard Atmosphere 1976. */
  @ParameterizedTest
  @CsvSource({"0, 47.8", "1000, 42.4", "2000, 37.5", "3000, 33.1"})
  void vacuumAboveWhichALeakIsChoked(double metres, double kilopascals) {
    double ambient = StandardAtmosphere.pascalsAt(metres) / 1_000;
    assertThat(LeakRate.chokedAbove(ambient)).isCloseTo(kilopascals, within(0.05));
  }
}
