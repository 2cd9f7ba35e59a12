package org.thumbseal.finding;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.thumbseal.finding.Signs.Pump;

/**
 * The rules follow from S p = S0 (p - p_ult) and V dp/dt = -S0 (p - p_ult) + Q: a leak lowers the
 * maximum by Q/S0 and leaves tau = V/S0; lost speed lengthens tau and leaves the maximum; worn
 * valves do both; less volume shortens tau.
 */
class AgainstSoundTest {
  private static final Pump SOUND = new Pump(0.2, 0.1, 0, 0, Optional.empty());

  @ParameterizedTest
  @CsvSource({
    "0.200, 0.10, 0.05, 0.0, LEAK",
    "0.201, 0.13, 0.00, 0.0, LEAK",
    "0.180, 0.15, 0.00, 0.0, WORN_PUMP",
    "0.160, 0.10, 0.00, 0.0, WORN_PUMP",
    "0.300, 0.10, 0.00, 0.0, REDUCED_VOLUME",
    "0.200, 0.10, 0.00, 0.3, RESTRICTION"
  })
  void tellsTheCausesApart(
      double rate, double ultimate, double leak, double restriction, FindingCode expected) {
    Pump now = new Pump(rate, ultimate, leak, restriction, Optional.empty());
    assertThat(AgainstSound.of(now, SOUND, true))
        .hasValueSatisfying(f -> assertThat(f.code()).isEqualTo(expected));
  }

  @ParameterizedTest
  @CsvSource({"0.2, 0.1", "0.203, 0.103", "0.197, 0.098"})
  void whatADayMakesIsNoFinding(double rate, double ultimate) {
    assertThat(AgainstSound.of(new Pump(rate, ultimate, 0, 0, Optional.empty()), SOUND, true))
        .isEmpty();
  }

  /** 1.5 kPa less may be the weather, where no barometer was read. */
  @Test
  void weatherIsNoLeak() {
    Pump now = new Pump(0.2, 0.115, 0, 0, Optional.empty());
    assertThat(AgainstSound.of(now, SOUND, true)).isPresent();
    assertThat(AgainstSound.of(now, SOUND, false)).isEmpty();
  }

  @Test
  void theEvidenceHasNumbers() {
    Pump now = new Pump(0.1, 0.1, 0, 0, Optional.empty());
    assertThat(AgainstSound.of(now, SOUND, true).orElseThrow().text())
        .contains("50 %")
        .contains("90.0 %");
  }

  @Test
  void theLargerTheSignTheSurer() {
    double small =
        AgainstSound.of(new Pump(0.19, 0.1, 0, 0, Optional.empty()), SOUND, true)
            .orElseThrow()
            .confidence();
    double large =
        AgainstSound.of(new Pump(0.1, 0.1, 0, 0, Optional.empty()), SOUND, true)
            .orElseThrow()
            .confidence();
    assertThat(small).isBetween(0.5, 0.85);
    assertThat(large).isBetween(0.9, 0.97);
  }
}
