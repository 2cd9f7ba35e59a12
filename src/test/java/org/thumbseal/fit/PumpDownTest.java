package org.thumbseal.fit;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.thumbseal.fit.PumpDown.Rise;

class PumpDownTest {
  private static final double AMBIENT = 101.325;

  /** S p = S0 (p - p_ult) at constant temperature: p falls to p_ult with tau = V/S0, by hand. */
  @ParameterizedTest
  @CsvSource({"0.25,0.148", "0.125,0.05", "1,0.3"})
  void withoutCoolingItIsOneExponential(double rate, double ultimate) {
    double[] p = {rate, ultimate, 0.051};
    PumpDown model = PumpDown.tight(new Rise(AMBIENT, 0, 30));
    for (double t : new double[] {2 / rate, 3 / rate}) {
      double exponential = AMBIENT * (1 - ultimate) * (1 - Math.exp(-rate * t));
      assertThat(model.value(p, t)).isCloseTo(exponential, within(0.6));
    }
  }

  /**
   * With no wall the first fall of pressure is that of an adiabatic expansion: 1.4 times as steep.
   */
  @Test
  void startsAsAnAdiabaticExpansion() {
    double[] p = {0.25, 0.1, 900};
    double slope = PumpDown.tight(new Rise(AMBIENT, 0, 1)).value(p, 0.02) / 0.02;
    assertThat(slope).isCloseTo(1.4 * 0.25 * 0.9 * AMBIENT, within(0.2));
  }

  @Test
  void aChokedLeakStopsThePumpWhereBothFlowsAreEqual() {
    double[] p = {0.25, 0.1, 1, 0.05};
    double still = PumpDown.leaking(new Rise(AMBIENT, 0, 120)).value(p, 120);
    assertThat(still).isCloseTo(AMBIENT * (1 - 0.1 - 0.05 / 0.25), within(1e-3));
  }

  @Test
  void derivativesAgreeWithDifferences() {
    SplittableRandom random = new SplittableRandom(5);
    PumpDown leaking = PumpDown.leaking(new Rise(AMBIENT, 0.4, 40));
    PumpDown restricted = PumpDown.restricted(new Rise(AMBIENT, 0.4, 40));
    for (int i = 0; i < 20; i++) {
      double[] p = {
        0.05 + random.nextDouble(),
        0.05 + 0.3 * random.nextDouble(),
        0.3 + 3 * random.nextDouble(),
        0.03 * random.nextDouble()
      };
      double x = 0.1 + 30 * random.nextDouble();
      assertDerivatives(leaking, p, x);
      p[3] = 0.1 + 5 * random.nextDouble();
      assertDerivatives(restricted, p, x);
    }
  }

  private static void assertDerivatives(PumpDown model, double[] p, double x) {
    double[] gradient = new double[4];
    model.gradient(p, x, gradient);
    for (int i = 0; i < 4; i++) {
      double[] up = p.clone();
      double[] down = p.clone();
      up[i] += 1e-5;
      down[i] -= 1e-5;
      double difference = (model.value(up, x) - model.value(down, x)) / 2e-5;
      assertThat(gradient[i]).isCloseTo(difference, within(1e-3 + 1e-4 * Math.abs(difference)));
    }
  }

  /**
   * The flow through a laminar restriction, (P1^2 - P2^2)/(2 r), is that of the pump behind it, k
   * (P2 - u): solved here by halving, for one row by hand.
   */
  @ParameterizedTest
  @CsvSource({"1,0.2,0.1,3", "0.3,0.2,0.1,3", "0.5,1,0.05,0.4", "0.9,0.1,0.3,0"})
  void aRestrictionPassesWhatThePumpTakes(double pressure, double k, double u, double r) {
    double low = 0;
    double high = pressure;
    for (int i = 0; i < 60; i++) {
      double middle = (low + high) / 2;
      boolean passesLess = (pressure * pressure - middle * middle) / 2 < r * k * (middle - u);
      high = passesLess ? middle : high;
      low = passesLess ? low : middle;
    }
    double flow = PumpFlow.at(pressure, new double[] {k, u, 1, 0, r}).flow();
    assertThat(flow).isCloseTo(k * (high - u), within(1e-9));
  }

  /** Isentropic nozzle flow, computed apart: critical ratio (2/2.4)^3.5 = 0.528282. */
  @Test
  void aLeakIsConstantBelowTheCriticalRatio() {
    assertThat(Orifice.at(0.2).flow()).isEqualTo(1);
    assertThat(Orifice.at(0.528).flow()).isEqualTo(1);
    assertThat(Orifice.at(0.53).flow()).isLessThan(1).isGreaterThan(0.9999);
    assertThat(Orifice.at(0.8).flow()).isCloseTo(0.8188, within(1e-4));
    assertThat(Orifice.at(0.99).flow()).isCloseTo(0.2054, within(1e-4));
  }

  @Test
  void findsItsOwnParametersAgain() {
    double[] truth = {0.2, 0.12, 1.5, 0.02};
    PumpDown model = PumpDown.leaking(new Rise(AMBIENT, 0.3, 30));
    double[] x = new double[300];
    double[] y = new double[300];
    for (int i = 0; i < x.length; i++) {
      x[i] = 0.1 * (i + 1);
      y[i] = model.value(truth, x[i]);
    }
    FitResult fit =
        LeastSquares.fit(model, Points.of(x, y), new double[] {0.3, 0.2, 0.8, 0.005})
            .result()
            .orElseThrow();
    for (int i = 0; i < truth.length; i++) {
      assertThat(fit.parameter(i)).isCloseTo(truth[i], within(1e-6));
    }
  }
}
