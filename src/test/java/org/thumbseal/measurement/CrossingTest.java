package org.thumbseal.measurement;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** 65 kPa on v = 90 (1 - exp(-t/tau)) are crossed at t = -tau ln(1 - 65/90). */
class CrossingTest {
  private static double rise(double t, double tau) {
    return 90 * (1 - Math.exp(-t / tau));
  }

  private static double truth(double tau) {
    return -tau * Math.log(1 - 65.0 / 90);
  }

  @ParameterizedTest
  @CsvSource({"0.5, 100, 0.003", "0.5, 20, 0.02", "2, 50, 0.004", "6, 100, 0.002", "40, 10, 0.03"})
  void isWhereTheFormulaSays(double tau, double hertz, double tolerance) {
    Crossing crossing =
        Crossing.of(Drawn.curve(5 * tau, hertz, t -> rise(t, tau)), 65, 0).orElseThrow();

    assertThat(crossing.seconds()).isCloseTo(truth(tau), within(tolerance));
    assertThat(crossing.slope()).isCloseTo((90 - 65) / tau, within(0.05 * 25 / tau));
  }

  /** Ripple of 2 kPa at 24 Hz would be crossed half a second early by a look at single samples. */
  @Test
  void isFreedOfRippleWithoutDelay() {
    Curve curve =
        Drawn.noisy(30, 200, t -> rise(t, 6) + 2 * Math.sin(2 * Math.PI * 24 * t + 1), 0.1, 3);
    double naive = curve.time(firstAbove(curve));
    Crossing crossing = Crossing.of(curve, 65, 0).orElseThrow();

    assertThat(Math.abs(naive - truth(6))).isGreaterThan(0.2);
    assertThat(crossing.seconds()).isCloseTo(truth(6), within(0.03));
  }

  private static int firstAbove(Curve curve) {
    int i = 0;
    while (curve.level(i) < 65) {
      i++;
    }
    return i;
  }

  @Test
  void noiseScattersItByWhatIsStated() {
    double squares = 0;
    for (int seed = 0; seed < 100; seed++) {
      Crossing crossing =
          Crossing.of(Drawn.noisy(30, 100, t -> rise(t, 6), 0.12, seed), 65, 0).orElseThrow();
      double error = (crossing.seconds() - truth(6)) * crossing.slope() / crossing.levelError();
      squares += error * error;
    }
    assertThat(Math.sqrt(squares / 100)).isBetween(0.75, 1.3);
  }

  @Test
  void thereIsNoneWhereTheLevelIsNotReached() {
    assertThat(Crossing.of(Drawn.curve(30, 100, t -> rise(t, 6)), 91, 0))
        .isEqualTo(Optional.empty());
  }
}
