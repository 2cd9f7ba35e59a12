package org.thumbseal.measurement;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** The knee of a curve whose knee is known. */
class KneeTest {
  private static final double KNEE = 1.2345;

  private static double parabola(double t) {
    double x = Math.max(0, t - KNEE);
    return 12 * x - 0.8 * x * x;
  }

  @ParameterizedTest
  @ValueSource(doubles = {20, 50, 100, 1000})
  void isFoundBetweenTheSamples(double hertz) {
    Knee knee = Knee.of(Drawn.curve(2.2, hertz, KneeTest::parabola), 0.5, 1.9).orElseThrow();

    assertThat(knee.seconds()).isCloseTo(KNEE, within(2e-4));
    assertThat(knee.standardUncertainty()).isLessThan(1e-3);
  }

  /** Errors over many seeds scatter as the stated uncertainty says, and about nothing. */
  @Test
  void theUncertaintyIsHonest() {
    int seeds = 200;
    double sum = 0;
    double squares = 0;
    for (int seed = 0; seed < seeds; seed++) {
      Curve curve = Drawn.noisy(2.2, 100, KneeTest::parabola, 0.1, seed);
      Knee knee = Knee.of(curve, 0.5, 1.9).orElseThrow();
      double error = (knee.seconds() - KNEE) / knee.standardUncertainty();
      sum += error;
      squares += error * error;
    }
    assertThat(Math.sqrt(squares / seeds)).isBetween(0.8, 1.25);
    assertThat(sum / seeds).isBetween(-0.3, 0.3);
  }

  @Test
  void thereIsNoneWhereNothingClimbs() {
    assertThat(Knee.of(Drawn.curve(2, 100, t -> 0), 0.5, 1.5)).isEqualTo(Optional.empty());
    assertThat(Knee.of(Drawn.curve(2, 100, t -> -parabola(t)), 0.5, 1.9))
        .isEqualTo(Optional.empty());
  }

  @Test
  void thereIsNoneAtTheEdgeOfTheSearch() {
    assertThat(Knee.of(Drawn.curve(2.2, 100, KneeTest::parabola), 1.4, 1.9))
        .isEqualTo(Optional.empty());
  }
}
