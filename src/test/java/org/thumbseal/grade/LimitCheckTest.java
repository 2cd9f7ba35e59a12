package org.thumbseal.grade;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.function.DoubleUnaryOperator;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.thumbseal.grade.Criteria.DecisionRule;
import org.thumbseal.grade.LimitCheck.Side;
import org.thumbseal.measurement.Measurement;
import org.thumbseal.quantity.NormalDistribution;
import org.thumbseal.quantity.Quantity;

/** Conformance probabilities and risks against the worked examples of JCGM 106:2012. */
class LimitCheckTest {
  private static LimitCheck check(Side side, double limit, double value, double u) {
    return new LimitCheck("x", side, limit, new Quantity(value, "1", u), DecisionRule.SIMPLE);
  }

  /**
   * Zener diode (-5.47 V, u = 0.05 V, at most -5.40 V), burst strength (509.7 kPa, u = 8.6 kPa, at
   * least 490 kPa), speed (read as 107, u = 2 %, more than 100): inputs and results of JCGM
   * 106:2012, from memory, and computed apart.
   */
  @ParameterizedTest
  @CsvSource({
    "AT_MOST,  -5.40, -5.47, 0.05, 0.91924",
    "AT_LEAST, 490,   509.7, 8.6,  0.98901",
    "AT_LEAST, 100,   107,   2.14, 0.99946",
  })
  void conformanceOfTheExamples(Side side, double limit, double value, double u, double expected) {
    assertThat(check(side, limit, value, u).conformance()).isCloseTo(expected, within(0.000_01));
  }

  /** An illustrative budget: u = 0.49 kPa at a limit of at least 80 kPa, computed apart. */
  @ParameterizedTest
  @CsvSource({"79.0, 0.021", "79.5, 0.154", "80.0, 0.500", "80.5, 0.846", "81.0, 0.979"})
  void conformanceNearTheLimitOfTheMaximum(double vacuum, double expected) {
    assertThat(check(Side.AT_LEAST, 80, vacuum, 0.49).conformance())
        .isCloseTo(expected, within(0.0006));
  }

  /**
   * Risk of a false pass right at the acceptance limit, Phi(-2 r) with the guard band r U: 2.275 %
   * for r = 1 (ILAC-G8:09/2019 says below 2.5 %), 50 % for none.
   */
  @Test
  void riskAtTheAcceptanceLimit() {
    Quantity value = Quantity.kilopascals(82, 1);
    LimitCheck guarded = new LimitCheck("x", Side.AT_LEAST, 80, value, DecisionRule.GUARDED);

    assertThat(guarded.outcome()).isEqualTo(Verdict.PASS);
    assertThat(1 - guarded.conformance()).isCloseTo(0.02275, within(0.000_005));
    assertThat(check(Side.AT_LEAST, 80, 80, 1).conformance()).isEqualTo(0.5);
  }

  @Test
  void withoutUncertaintyTheLimitItselfDecides() {
    assertThat(check(Side.AT_MOST, 10, 10, 0).conformance()).isEqualTo(1);
    assertThat(check(Side.AT_MOST, 10, 10.01, 0).conformance()).isZero();
  }

  /** The checks are those the verdict came from. */
  @Test
  void theChecksAreThoseOfTheGrade() {
    Measurement measurement = Sheet.sound().measurement();
    List<LimitCheck> checks = LimitCheck.of(measurement, Grade.of(measurement, Criteria.DEFAULT));

    assertThat(checks)
        .extracting(LimitCheck::measurement, LimitCheck::limit, LimitCheck::outcome)
        .containsExactly(
            org.assertj.core.groups.Tuple.tuple("riseTime", 10.0, Verdict.PASS),
            org.assertj.core.groups.Tuple.tuple("maximumVacuum", 80.0, Verdict.PASS));
    assertThat(checks).extracting(LimitCheck::guardBand).containsExactly(0.4, 2.0);
  }

  /**
   * Ball bearings, JCGM 106:2012 9.5.4: what is made follows a gamma distribution of shape 4 and
   * scale 1/4 um, at most 2 um are allowed, u = 0.25 um, simple acceptance. Figures of a worked
   * notebook of a public library for uncertainties.
   */
  @Test
  void ballBearings() {
    DoubleUnaryOperator made = x -> Math.pow(4, 4) / 6 * x * x * x * Math.exp(-4 * x);
    DoubleUnaryOperator accepted = x -> acceptedAtMost(2, x, 0.25);

    assertThat(integral(made, 2, 12)).isCloseTo(0.04238011, within(1e-7));
    assertThat(integral(x -> made.applyAsDouble(x) * accepted.applyAsDouble(x), 2, 12))
        .isCloseTo(0.00801911, within(1e-7));
    assertThat(integral(x -> made.applyAsDouble(x) * (1 - accepted.applyAsDouble(x)), 0, 2))
        .isCloseTo(0.017445, within(1e-6));
  }

  /** The same with the limit of acceptance at 1.671829 um: 0.1 % false acceptance. */
  @Test
  void ballBearingsWithAGuardBand() {
    DoubleUnaryOperator made = x -> Math.pow(4, 4) / 6 * x * x * x * Math.exp(-4 * x);

    assertThat(integral(x -> made.applyAsDouble(x) * acceptedAtMost(1.671829, x, 0.25), 2, 12))
        .isCloseTo(0.001, within(1e-7));
    assertThat(integral(x -> made.applyAsDouble(x) * (1 - acceptedAtMost(1.671829, x, 0.25)), 0, 2))
        .isCloseTo(0.075494, within(1e-6));
  }

  /**
   * Resistors of 1500 ohm, JCGM 106:2012: made with a standard deviation of 0.12, allowed 1499.8 to
   * 1500.2, measured with u = 0.04. Risks of consumer and producer, computed apart (the guide
   * prints about 0.01 and 0.07 for acceptance within +-0.18, from memory).
   */
  @ParameterizedTest
  @CsvSource({"0.20, 0.018942, 0.037208", "0.18, 0.009878, 0.069027"})
  void resistors(double acceptance, double consumer, double producer) {
    DoubleUnaryOperator made =
        x -> Math.exp(-x * x / (2 * 0.12 * 0.12)) / (0.12 * Math.sqrt(2 * Math.PI));
    DoubleUnaryOperator accepted =
        x -> acceptedAtMost(acceptance, x, 0.04) - acceptedAtMost(-acceptance, x, 0.04);
    DoubleUnaryOperator bad = x -> made.applyAsDouble(x) * accepted.applyAsDouble(x);
    DoubleUnaryOperator good = x -> made.applyAsDouble(x) * (1 - accepted.applyAsDouble(x));

    assertThat(integral(made, -0.2, 0.2)).isCloseTo(0.904419, within(1e-6));
    assertThat(integral(bad, -1.2, -0.2) + integral(bad, 0.2, 1.2))
        .isCloseTo(consumer, within(1e-6));
    assertThat(integral(good, -0.2, 0.2)).isCloseTo(producer, within(1e-6));
  }

  /**
   * Probability that a true value is accepted under simple acceptance: the readings that {@link
   * Decision} passes, up to the limit, are below it with the probability of the normal
   * distribution.
   */
  private static double acceptedAtMost(double limit, double truth, double u) {
    assertThat(Decision.atMost(limit, new Quantity(limit, "1", u), DecisionRule.SIMPLE))
        .isEqualTo(Verdict.PASS);
    assertThat(Decision.atMost(limit, new Quantity(limit + 1e-9, "1", u), DecisionRule.SIMPLE))
        .isEqualTo(Verdict.FAIL);
    return NormalDistribution.cumulative((limit - truth) / u);
  }

  /** Simpson's rule. */
  private static double integral(DoubleUnaryOperator f, double from, double to) {
    int n = 4_000;
    double h = (to - from) / n;
    double sum = f.applyAsDouble(from) + f.applyAsDouble(to);
    for (int i = 1; i < n; i++) {
      sum += (i % 2 == 1 ? 4 : 2) * f.applyAsDouble(from + i * h);
    }
    return sum * h / 3;
  }
}
