package org.thumbseal.report;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Locale;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class MarkupTest {
  @ParameterizedTest
  @CsvSource({
    "0, 0.00, 0.0",
    "-0.001, 0.00, 0.0",
    "-0.06, -0.06, -0.1",
    "0.004, 0.00, 0.0",
    "7.999, 8.00, 8.0",
    "-12.34, -12.34, -12.3",
    "1e15, 1000000000000000.00, 1000000000000000.0",
    "NaN, NaN, NaN",
  })
  void coordinatesHaveTheirPlaces(double value, String at, String roughly) {
    assertThat(Markup.at(value)).isEqualTo(at);
    assertThat(Markup.roughly(value)).isEqualTo(roughly);
  }

  /** The formatter of Java is held against it, away from ties and from a minus before nothing. */
  @Test
  void theyAreWhatTheFormatterGives() {
    Random random = new Random(7);
    for (int i = 0; i < 20_000; i++) {
      double value = (random.nextInt(2_000_000) - 1_000_000) / 1_000.0 + 0.0003;
      String expected = String.format(Locale.ROOT, "%.2f", value);
      assertThat(Markup.at(value)).isEqualTo(expected.equals("-0.00") ? "0.00" : expected);
    }
  }
}
