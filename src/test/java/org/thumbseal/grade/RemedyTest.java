package org.thumbseal.grade;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.thumbseal.measurement.Budgeted;
import org.thumbseal.measurement.Contribution;
import org.thumbseal.measurement.SensorCalibration;

/** What a text says that would settle a value near a limit. */
class RemedyTest {
  /** A calibration of which only the standing matters. */
  private record Standing(SensorCalibration.Standing standing) implements SensorCalibration {
    @Override
    public double corrected(double kilopascals) {
      return kilopascals;
    }

    @Override
    public List<Contribution> errors(double kilopascals) {
      return List.of();
    }

    @Override
    public Optional<LocalDate> due() {
      return Optional.empty();
    }
  }

  private static String text(
      double value, double sensor, String other, SensorCalibration.Standing standing) {
    String[] named = other.split("=", -1);
    Budgeted budgeted =
        new Budgeted(
            value,
            "kPa",
            List.of(
                new Contribution("sensor", sensor, "test"),
                new Contribution(named[0], Double.parseDouble(named[1]), "test"),
                new Contribution("resolution", 0.001, "test")));
    return new Remedy(budgeted, Math.abs(value - 80), new Standing(standing)).text();
  }

  @Test
  void theSensorDominates() {
    assertThat(text(81, 1.17, "noise=0.05", SensorCalibration.Standing.ABSENT))
        .contains("U of 1.00 kPa or less, not 2.34 kPa", "not calibrated", "thumbseal calibrate")
        .doesNotContain("as well", "even that");
    assertThat(text(81, 1.17, "noise=0.9", SensorCalibration.Standing.ABSENT))
        .endsWith("Then repeat the test as well.");
    assertThat(text(80.1, 1.17, "noise=0.01", SensorCalibration.Standing.ABSENT))
        .contains("even that may not tell");
    assertThat(text(80.5, 0.6, "noise=0.05", SensorCalibration.Standing.OVERDUE))
        .contains("overdue: calibrate it again");
    assertThat(text(80.5, 0.3, "noise=0.05", SensorCalibration.Standing.VALID))
        .contains("with a better gauge");
  }

  @Test
  void theRecordingDominates() {
    assertThat(text(80.5, 0.2, "noise=0.6", SensorCalibration.Standing.VALID))
        .contains("this recording (noise): repeat the test, with a longer hold")
        .doesNotContain("calibrate");
    assertThat(text(79.5, 1.1, "zero=1.4", SensorCalibration.Standing.ABSENT))
        .contains("leave the pump off for 5 s", "Then calibrate the sensor as well");
    assertThat(text(80.5, 0.2, "clock=0.6", SensorCalibration.Standing.VALID))
        .contains("longer recording");
  }
}
