package org.thumbseal.finding;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.thumbseal.finding.Asked.Speed;

/** A slow or fast rise of the usual shape, with and without what the pump's papers promise. */
class AloneTest {
  private static final Signs.Pump PUMP = new Signs.Pump(0.2, 0.08, 0, 0, Optional.empty());

  private static List<Finding> of(double riseTime, Optional<Speed> speed) {
    return Alone.of(new Asked(0.79, 0.05, riseTime, 10, 6, speed), PUMP);
  }

  /** Slow is less than 80 %, fast more than 120 % of the rated speed. */
  @ParameterizedTest
  @CsvSource({
    "14, 23.9, worn-pump,      0.85",
    "14, 24.1, worn-pump,      0.3",
    "4,  36.1, reduced-volume, 0.85",
    "4,  35.9, reduced-volume, 0.3",
  })
  void theRatedSpeedBearsASuspicionOutOrSpeaksAgainstIt(
      double riseTime, double measured, String code, double confidence) {
    assertThat(of(riseTime, Optional.of(new Speed(measured, 30))))
        .singleElement()
        .satisfies(
            f -> {
              assertThat(f.code().code()).isEqualTo(code);
              assertThat(f.confidence()).isEqualTo(confidence);
              assertThat(f.text()).contains(measured + " L/min, ").contains("the rated 30.0 L/min");
            });
  }

  @Test
  void withoutItAnotherRecordIsAskedFor() {
    assertThat(of(14, Optional.empty()))
        .singleElement()
        .satisfies(
            f -> {
              assertThat(f.confidence()).isEqualTo(0.6);
              assertThat(f.text()).endsWith("less speed, or a larger jar.");
              assertThat(f.advice()).endsWith("given with --against.");
            });
  }

  @Test
  void aRiseAsUsualNeedsNoPapers() {
    assertThat(of(8, Optional.of(new Speed(10, 30)))).isEmpty();
  }
}
