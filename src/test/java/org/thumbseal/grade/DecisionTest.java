package org.thumbseal.grade;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.thumbseal.grade.Criteria.DecisionRule;
import org.thumbseal.quantity.Quantity;

/**
 * The decision rule: guard band w = U = 2 u (ILAC-G8:09/2019 4.2.2 and 4.2.3 as quoted by pages on
 * it; JCGM 106:2012 8.3), simple acceptance w = 0 (ILAC-G8:09/2019 4.2.1).
 */
class DecisionTest {

  /** Limit 80 kPa, u = 1 kPa: acceptance limit 82, rejection limit 78. */
  @ParameterizedTest
  @CsvSource({
    "84,    pass,         pass",
    "82,    pass,         pass",
    "81.99, inconclusive, pass",
    "80,    inconclusive, pass",
    "79.99, inconclusive, fail",
    "78.01, inconclusive, fail",
    "78,    fail,         fail",
    "70,    fail,         fail",
  })
  void aLowerLimit(double value, String guarded, String simple) {
    Quantity maximum = Quantity.kilopascals(value, 1);

    assertThat(Decision.atLeast(80, maximum, DecisionRule.GUARDED).code()).isEqualTo(guarded);
    assertThat(Decision.atLeast(80, maximum, DecisionRule.SIMPLE).code()).isEqualTo(simple);
  }

  /** Limit 10 s, u = 0.25 s: acceptance limit 9.5, rejection limit 10.5. */
  @ParameterizedTest
  @CsvSource({
    "8,     pass,         pass",
    "9.5,   pass,         pass",
    "9.51,  inconclusive, pass",
    "10,    inconclusive, pass",
    "10.01, inconclusive, fail",
    "10.49, inconclusive, fail",
    "10.5,  fail,         fail",
    "20,    fail,         fail",
  })
  void anUpperLimit(double value, String guarded, String simple) {
    Quantity time = Quantity.seconds(value, 0.25);

    assertThat(Decision.atMost(10, time, DecisionRule.GUARDED).code()).isEqualTo(guarded);
    assertThat(Decision.atMost(10, time, DecisionRule.SIMPLE).code()).isEqualTo(simple);
  }

  /**
   * Burst strength, JCGM 106:2012 (from memory): lower limit 490 kPa, measured 509.7 with u = 8.6:
   * conformance probability 0.98901, more than the 97.7 % that a guard band of 2 u stands for.
   */
  @Test
  void theBurstStrengthOfTheGuideIsAccepted() {
    assertThat(Decision.atLeast(490, Quantity.kilopascals(509.7, 8.6), DecisionRule.GUARDED))
        .isEqualTo(Verdict.PASS);
  }

  /**
   * Zener diode, JCGM 106:2012 (from memory): upper limit -5.40 V, measured -5.47 with u = 0.05:
   * conformance probability 0.91924, too little for a guard band of 2 u, enough without.
   */
  @Test
  void theZenerDiodeOfTheGuideIsTooNearItsLimit() {
    Quantity voltage = new Quantity(-5.47, "V", 0.05);

    assertThat(Decision.atMost(-5.40, voltage, DecisionRule.GUARDED))
        .isEqualTo(Verdict.INCONCLUSIVE);
    assertThat(Decision.atMost(-5.40, voltage, DecisionRule.SIMPLE)).isEqualTo(Verdict.PASS);
  }

  /** At the limit itself Phi(-2) = 2.275 % pass falsely with the guard band, 50 % without. */
  @Test
  void theRiskAtTheLimitIsThatOfTheGuardBand() {
    Random random = new Random(106);
    int n = 100_000;
    int guarded = 0;
    int simple = 0;
    for (int i = 0; i < n; i++) {
      Quantity read = Quantity.kilopascals(80 + random.nextGaussian(), 1);
      guarded += Decision.atLeast(80, read, DecisionRule.GUARDED) == Verdict.PASS ? 1 : 0;
      simple += Decision.atLeast(80, read, DecisionRule.SIMPLE) == Verdict.PASS ? 1 : 0;
    }
    assertThat(guarded / (double) n).isBetween(0.0213, 0.0242);
    assertThat(simple / (double) n).isBetween(0.494, 0.506);
  }
}
