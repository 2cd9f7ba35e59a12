package org.thumbseal.calibration;

import static org.assertj.core.api.Assertions.assertThatCode;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.time.Instant;
import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Nonsense gets one line that says what is wrong and what to do. */
class RefusedTest {
  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      textBlock =
          """
          40=41                      | there is one
          40=41 40=41                | there is one
          40=41 40=60                | there is one
          0=0 80=81 80=81            | the pair 80.0=81.0 is there twice
          60=61 75=76.5              | span 15.5 kPa, from 61.0 to 76.5 kPa
          0=81 80=0                  | the sensor falls where the reference rises
          101=0 20=81                | the sensor falls where the reference rises
          0=0 80=50                  | 0.625 times as fast
          0=0 60=80                  | 1.333 times as fast
          0=0 81=-81                 | from 0 to 101.325 kPa, not -81.0 kPa
          0=0 81=607                 | from 0 to 101.325 kPa, not 607.0 kPa
          0=0 81=NaN                 | not NaN kPa
          0=0 NaN=81                 | no sensor reads a vacuum of NaN kPa
          0=0 Infinity=81            | no sensor reads a vacuum of Infinity kPa
          0=0 80=82 40=47 60=61      | the pairs contradict each other: 40.0=47.0
          """)
  void nonsense(String pairs, String why) {
    assertThatThrownBy(() -> Cases.of(Cases.DAY, pairs.split(" ", -1)))
        .isInstanceOf(CalibrationRefused.class)
        .hasMessageContaining(why)
        .hasMessageNotContaining("\n");
  }

  @Test
  void nothingAtAll() {
    assertThatThrownBy(() -> Calibration.of("x", Cases.facts(Cases.DAY), List.of()))
        .hasMessageContaining("there is none");
  }

  @Test
  void whatIsPlausibleIsTaken() {
    assertThatCode(() -> Cases.of(Cases.DAY, "0.4=0", "81.6=80")).doesNotThrowAnyException();
    assertThatCode(() -> Cases.of(Cases.DAY, "0=0", "30=30")).doesNotThrowAnyException();
    assertThatCode(() -> Cases.of(Cases.DAY, "0=0", "80=82", "80.1=82")).doesNotThrowAnyException();
  }

  @ParameterizedTest
  @CsvSource({
    "0, 2, uncertainty of the reference must be above 0",
    "NaN, 2, uncertainty of the reference must be above 0",
    "-0.1, 2, uncertainty of the reference must be above 0",
    "6, 2, at most 5 kPa",
    "0.25, 0.5, coverage factor must be between 1 and 4"
  })
  void aReferenceOfWhichNothingIsKnown(double uncertainty, double factor, String why) {
    ReferenceGauge gauge = new ReferenceGauge("RG-7", "C-1", uncertainty, factor);
    assertThatThrownBy(() -> with(gauge, "2027-03-02", 0.1)).hasMessageContaining(why);
  }

  @Test
  void otherFacts() {
    ReferenceGauge nameless = new ReferenceGauge("RG-7", " ", 0.25, 2);
    assertThatThrownBy(() -> with(nameless, "2027-03-02", 0.1))
        .hasMessageContaining("number of its certificate");
    assertThatThrownBy(() -> with(Cases.GAUGE, "2026-03-02", 0.1))
        .hasMessageContaining("must be after the calibration");
    assertThatThrownBy(() -> with(Cases.GAUGE, "2027-03-02", 0)).hasMessageContaining("above 0");
  }

  private static Calibration with(ReferenceGauge gauge, String due, double repeatability)
      throws CalibrationRefused {
    CalibrationFacts facts =
        new CalibrationFacts(
            "tp-01",
            Instant.parse("2026-03-02T07:00:00Z"),
            LocalDate.parse(due),
            gauge,
            repeatability,
            Optional.empty(),
            Optional.empty());
    return Calibration.of("x", facts, Cases.points("0=0", "80=81"));
  }
}
