package org.thumbseal.fit;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class SealedJarTest {
  private static final double AMBIENT = 101;

  /** Against the two balances themselves, integrated in small steps (classic Runge-Kutta). */
  @ParameterizedTest
  @CsvSource({"15, 16, 0.05, 12", "15, 16, 3, 12", "20, 20, 0, 50", "20, 18, -0.02, 50"})
  void solvesTheBalances(double pressure, double gas, double rate, double exchange) {
    SealedJar jar = new SealedJar(AMBIENT, exchange);
    double[] p = {AMBIENT - pressure, gas, rate};
    double step = 1e-3;
    double now = pressure;
    for (int i = 0; i < 8_000; i++) {
      double t = i * step;
      double k1 = slope(now, gas + rate * t, rate, exchange);
      double k2 = slope(now + step / 2 * k1, gas + rate * (t + step / 2), rate, exchange);
      double k3 = slope(now + step / 2 * k2, gas + rate * (t + step / 2), rate, exchange);
      double k4 = slope(now + step * k3, gas + rate * (t + step), rate, exchange);
      now += step / 6 * (k1 + 2 * k2 + 2 * k3 + k4);
      assertThat(AMBIENT - jar.value(p, t + step)).isCloseTo(now, within(1e-8));
    }
  }

  /** For air, gamma = 1.4. */
  private static double slope(double pressure, double gas, double rate, double exchange) {
    return 1.4 * rate + exchange * (1 - pressure / gas);
  }

  @ParameterizedTest
  @ValueSource(doubles = {-0.03, 1e-7, 0.05, 4})
  void derivativesAgreeWithDifferences(double rate) {
    SealedJar jar = new SealedJar(AMBIENT, 12);
    double[] p = {86, 16, rate};
    double[] gradient = new double[3];
    for (double x : new double[] {0, 0.3, 2, 9}) {
      jar.gradient(p, x, gradient);
      for (int i = 0; i < 3; i++) {
        assertThat(gradient[i])
            .as("by %s at %s", i, x)
            .isCloseTo(difference(jar, p, x, i), within(2e-6));
      }
    }
  }

  private static double difference(SealedJar jar, double[] p, double x, int index) {
    double[] up = p.clone();
    double[] down = p.clone();
    up[index] += 1e-5;
    down[index] -= 1e-5;
    return (jar.value(up, x) - jar.value(down, x)) / 2e-5;
  }

  @Test
  void withoutGasThereIsNoCurve() {
    assertThat(new SealedJar(AMBIENT, 12).value(new double[] {86, 15, -2}, 8)).isNaN();
    assertThat(new SealedJar(AMBIENT, 12).value(new double[] {86, 0, 1}, 8)).isNaN();
  }
}
