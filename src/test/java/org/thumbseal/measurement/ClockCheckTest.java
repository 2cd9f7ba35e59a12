package org.thumbseal.measurement;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.function.DoubleUnaryOperator;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.thumbseal.sample.StreamEvent.Sample;

/** A sensor's clock against the host's, 100 samples a second. */
class ClockCheckTest {
  private static List<Sample> samples(double seconds, DoubleUnaryOperator host) {
    return IntStream.range(0, (int) (100 * seconds))
        .mapToObj(i -> new Sample(i / 100.0, host.applyAsDouble(i / 100.0), 0))
        .toList();
  }

  /** Arrival in batches, always at the end of one. */
  private static double batched(double seconds, double batch) {
    return batch > 0 ? batch * Math.ceil(seconds / batch) : seconds;
  }

  @ParameterizedTest
  @CsvSource({"1, 0", "1.003, 0", "0.995, 0.016", "1.003, 0.016", "1.02, 0.1", "0.9999, 0.1"})
  void findsTheRate(double rate, double batch) {
    ClockCheck check = ClockCheck.of(samples(60, t -> 5 + batched(rate * t, batch)));

    assertThat(check.steady()).isTrue();
    assertThat(check.rate())
        .isCloseTo(rate, within(Math.max(1e-9, 3 * check.standardUncertainty())));
    assertThat(check.standardUncertainty()).isLessThan(5e-4);
  }

  @Test
  void aShortRecordCannotTell() {
    ClockCheck check = ClockCheck.of(samples(7, t -> 1.01 * t));

    assertThat(check.rate()).isEqualTo(1);
    assertThat(check.steady()).isTrue();
    // a resonator of +-0.5 %, rectangular (common practice, no published source)
    assertThat(check.standardUncertainty()).isCloseTo(0.005 / Math.sqrt(3), within(1e-12));
  }

  @Test
  void aClockThatJumpsIsNotSteady() {
    assertThat(ClockCheck.of(samples(60, t -> t < 30 ? t : t + 1)).steady()).isFalse();
  }

  /** Ten times too slow is no clock error but a wrong unit: the rate is not taken over. */
  @Test
  void aClockThatIsFarOffIsNotFollowed() {
    ClockCheck check = ClockCheck.of(samples(60, t -> 1.5 * t));

    assertThat(check.rate()).isEqualTo(1);
    assertThat(check.steady()).isFalse();
    assertThat(check.standardUncertainty()).isCloseTo(0.5, within(1e-9));
  }
}
