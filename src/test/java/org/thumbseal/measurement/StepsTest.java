package org.thumbseal.measurement;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.thumbseal.measurement.Steps.Level;

class StepsTest {
  private static double stairs(double t) {
    return t < 4.31 ? -0.1 : t < 9.87 ? 0.25 : 0.05;
  }

  @ParameterizedTest
  @CsvSource({"50, 0, 0.021", "100, 0.05, 0.03", "200, 0.12, 0.06"})
  void levelsAreCutAtTheSample(double hertz, double noise, double tolerance) {
    List<Level> levels = Steps.of(Drawn.noisy(14, hertz, StepsTest::stairs, noise, 11));

    assertThat(levels).hasSize(3);
    assertThat(levels.get(0).from()).isZero();
    assertThat(levels.get(0).to()).isCloseTo(4.31, within(tolerance));
    assertThat(levels.get(1).to()).isCloseTo(9.87, within(tolerance));
    assertThat(levels).extracting(Level::from).element(1).isEqualTo(levels.get(0).to());
    double error = 0.002 + 4 * noise / Math.sqrt(4 * hertz);
    assertThat(levels.get(0).mean()).isCloseTo(-0.1, within(error));
    assertThat(levels.get(1).mean()).isCloseTo(0.25, within(error));
    assertThat(levels.get(2).mean()).isCloseTo(0.05, within(error));
  }

  @Test
  void noiseAloneIsOneLevel() {
    int more = 0;
    for (int seed = 0; seed < 200; seed++) {
      more += Steps.of(Drawn.noisy(15, 100, t -> 0.2, 0.1, seed)).size() > 1 ? 1 : 0;
    }
    assertThat(more).isLessThanOrEqualTo(4);
  }

  @Test
  void aStepThatIsTooSmallToTellIsNone() {
    assertThat(Steps.of(Drawn.curve(10, 100, t -> t < 5 ? 0 : 0.01))).hasSize(1);
    assertThat(Steps.of(Drawn.curve(10, 100, t -> t < 5 ? 0 : 0.02))).hasSize(2);
  }

  @Test
  void nothingHasNoLevel() {
    assertThat(Steps.of(Drawn.curve(0, 100, t -> 0))).isEmpty();
  }
}
