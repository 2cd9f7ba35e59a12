package org.thumbseal.calibration;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.time.Instant;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.thumbseal.measurement.SensorCalibration;
import org.thumbseal.measurement.SensorCalibration.Standing;
import org.thumbseal.wire.WireRecord.Reference;

/** Which calibration a test uses. */
class CalibrationsTest {
  private static SensorCalibration chosen(String sensor, Optional<Instant> start, String... days)
      throws CalibrationRefused {
    var all = new java.util.ArrayList<Calibration>();
    for (String day : days) {
      all.add(Cases.of(day, "0.4=0", "80.4=82"));
    }
    return new Calibrations(all)
        .of(new Calibrations.Test(Optional.of(sensor), start, Reference.GAUGE));
  }

  private static String id(SensorCalibration chosen) {
    return ((AppliedCalibration) chosen).calibration().id();
  }

  @Test
  void theNewestThatWasThereWhenTheTestBegan() throws Exception {
    String[] days = {"2026-03-02", "2025-01-10", "2026-09-01"};

    assertThat(id(chosen("tp-01", Optional.of(Cases.after("2026-03-02", 0)), days)))
        .isEqualTo("2026-03-02-id");
    assertThat(id(chosen("tp-01", Optional.of(Cases.after("2026-03-02", -1)), days)))
        .isEqualTo("2025-01-10-id");
    assertThat(id(chosen("tp-01", Optional.of(Cases.after("2026-09-01", 1)), days)))
        .isEqualTo("2026-09-01-id");
  }

  @Test
  void noneOfAnotherSensorAndNoneWhereTheSensorIsNotKnown() throws Exception {
    Optional<Instant> start = Optional.of(Cases.after(Cases.DAY, 1));

    assertThat(chosen("tp-02", start, Cases.DAY)).isEqualTo(SensorCalibration.none());
    Calibrations.Test unknown = new Calibrations.Test(Optional.empty(), start, Reference.GAUGE);
    assertThat(new Calibrations(List.of(Cases.of(Cases.DAY, "0=0", "80=82"))).of(unknown))
        .isEqualTo(SensorCalibration.none());
  }

  @Test
  void aRecordWithoutADateTakesTheNewestAndSaysSo() throws Exception {
    SensorCalibration chosen = chosen("tp-01", Optional.empty(), "2026-03-02", "2025-01-10");

    assertThat(id(chosen)).isEqualTo("2026-03-02-id");
    assertThat(((AppliedCalibration) chosen).note(80).orElseThrow()).contains("has no date");
  }

  /** The as-found state tells of the time before, for as long as it is relied on afterwards. */
  @Test
  void theFirstOneAfterTheTestWhereThereWasNoneBefore() throws Exception {
    String[] days = {"2026-03-02", "2026-04-02"};
    SensorCalibration chosen = chosen("tp-01", Optional.of(Cases.after("2026-03-02", -30)), days);

    assertThat(id(chosen)).isEqualTo("2026-03-02-id");
    assertThat(((AppliedCalibration) chosen).note(80).orElseThrow()).contains("after the test");
    assertThat(chosen("tp-01", Optional.of(Cases.after("2026-03-02", -365)), days).standing())
        .isEqualTo(Standing.VALID);
    assertThat(chosen("tp-01", Optional.of(Cases.after("2026-03-02", -366)), days))
        .isEqualTo(SensorCalibration.none());
  }

  @Test
  void overdueFromTheDayAfterTheLast() throws Exception {
    SensorCalibration last = chosen("tp-01", Optional.of(Cases.after("2027-03-02", 0)), Cases.DAY);
    SensorCalibration over = chosen("tp-01", Optional.of(Cases.after("2027-03-03", 0)), Cases.DAY);

    assertThat(last.standing()).isEqualTo(Standing.VALID);
    assertThat(over.standing()).isEqualTo(Standing.OVERDUE);
    assertThat(over.standardUncertainty(80)).isGreaterThan(last.standardUncertainty(80));
  }

  /** By hand: +-0.5 % of 80 kPa; overdue twice that and 0.5 % a year; never above 2.5 %. */
  @Test
  void driftGrowsWithTheYearsOverdueUpToThatOfNoCalibration() throws Exception {
    assertThat(drift(100)).isCloseTo(80 * 0.005 / Math.sqrt(3), within(1e-9));
    assertThat(drift(365 + 1461 / 4)).isCloseTo(80 * 0.015 / Math.sqrt(3), within(80 * 0.0001));
    assertThat(drift(365 * 20)).isCloseTo(80 * 0.025 / Math.sqrt(3), within(1e-9));
  }

  private static double drift(int days) throws CalibrationRefused {
    return chosen("tp-01", Optional.of(Cases.after(Cases.DAY, days)), Cases.DAY).errors(80).stream()
        .filter(c -> c.name().equals("calibration-drift"))
        .findFirst()
        .orElseThrow()
        .standardUncertainty();
  }

  /** A line up to 40 kPa, used at 90. */
  @Test
  void extrapolationWidensAndIsSaid() throws Exception {
    Optional<Instant> start = Optional.of(Cases.after(Cases.DAY, 1));
    Calibration low = Cases.of(Cases.DAY, "0=0", "20=20.2", "39.6=40");
    Calibration high = Cases.of(Cases.DAY, "0=0", "45=45.4", "89.1=90");
    AppliedCalibration shorter = applied(low, start);
    AppliedCalibration longer = applied(high, start);

    double usualBow = 0.0025 * 40 / Math.sqrt(3);
    double timesBeyond = 4 * (90.0 / 40) * (90.0 / 40 - 1);
    assertThat(linearity(shorter)).isCloseTo(usualBow * timesBeyond, within(1e-9));
    assertThat(shorter.standardUncertainty(90)).isGreaterThan(2 * longer.standardUncertainty(90));
    assertThat(shorter.note(90).orElseThrow()).contains("calibrated up to 40.0 kPa only");
    assertThat(longer.note(90)).isEmpty();
    assertThat(shorter.errors(90)).anyMatch(c -> c.source().contains("beyond its last point"));
  }

  private static double linearity(AppliedCalibration applied) {
    return applied.errors(90).stream()
        .filter(c -> c.name().equals("calibration-linearity"))
        .findFirst()
        .orElseThrow()
        .standardUncertainty();
  }

  private static AppliedCalibration applied(Calibration calibration, Optional<Instant> start) {
    var test = new Calibrations.Test(Optional.of("tp-01"), start, Reference.GAUGE);
    return (AppliedCalibration) new Calibrations(List.of(calibration)).of(test);
  }

  /** The scale of an absolute sensor is turned about the air, so that air stays air. */
  @Test
  void anAbsoluteSensorStillReadsTheAir() throws Exception {
    var test =
        new Calibrations.Test(
            Optional.of("tp-01"), Optional.of(Cases.after(Cases.DAY, 1)), Reference.ABSOLUTE);
    SensorCalibration chosen =
        new Calibrations(List.of(Cases.of(Cases.DAY, "0=0", "80=82"))).of(test);

    assertThat(chosen.corrected(-101.325)).isEqualTo(-101.325);
    assertThat(chosen.corrected(-21.325) - chosen.corrected(-101.325)).isCloseTo(82, within(1e-9));
  }
}
