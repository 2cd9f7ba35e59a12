package org.thumbseal.measurement;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;

/** The highest 1 s mean, of curves for which it can be written down. */
class PlateauTest {

  /**
   * Among some thousand noisy means the highest is too high. The plateau must be within 0.03 kPa,
   * the aim of the project's own accuracy table, at the largest noise that table speaks of.
   */
  @Test
  void ofAConstantWithNoiseIsTheConstant() {
    double sum = 0;
    double naive = 0;
    for (int seed = 0; seed < 50; seed++) {
      Curve curve = Drawn.noisy(20, 100, t -> 91.5, 0.3, seed);
      sum += Plateau.of(curve, 0.3).kilopascals();
      naive += highestMean(curve);
    }
    assertThat(naive / 50 - 91.5).isGreaterThan(0.06);
    assertThat(sum / 50).isCloseTo(91.5, within(0.03));
  }

  private static double highestMean(Curve curve) {
    double highest = 0;
    for (double t = 0; t < 19; t += 0.1) {
      highest = Math.max(highest, curve.between(t, t + 1).mean());
    }
    return highest;
  }

  /** v = 90 (1 - exp(-t/6)), cut off at 30 s: the mean of the last second, in closed form. */
  @Test
  void ofARiseIsItsLastSecond() {
    Curve curve = Drawn.noisy(30, 100, t -> 90 * (1 - Math.exp(-t / 6)), 0.05, 1);
    double truth = 90 - 90 * 6 * (Math.exp(-29 / 6.0) - Math.exp(-30 / 6.0));

    assertThat(Plateau.of(curve, 0.05).kilopascals()).isCloseTo(truth, within(0.03));
  }

  /** Falling by 0.5 kPa/s from 90 kPa: the first second has the highest mean, 89.75 kPa. */
  @Test
  void ofAFallIsItsFirstSecond() {
    Curve curve = Drawn.noisy(10, 100, t -> 90 - 0.5 * t, 0.05, 1);
    Plateau plateau = Plateau.of(curve, 0.05);

    assertThat(plateau.kilopascals()).isCloseTo(89.75, within(0.03));
    assertThat(plateau.from()).isLessThan(0.2);
  }

  @Test
  void needsASecond() {
    assertThat(Plateau.isIn(Drawn.curve(1.0, 100, t -> 90))).isTrue();
    assertThat(Plateau.isIn(Drawn.curve(0.8, 100, t -> 90))).isFalse();
    assertThat(Plateau.isIn(Drawn.curve(3, 1, t -> 90))).isFalse();
  }
}
