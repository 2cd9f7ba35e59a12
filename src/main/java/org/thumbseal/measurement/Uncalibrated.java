package org.thumbseal.measurement;

import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import org.thumbseal.measurement.Contribution.Input;

/** A low-cost sensor without a calibration: its readings are taken as they are. */
record Uncalibrated() implements SensorCalibration {
  /** +-2.5 % of reading, rectangular: a low-cost sensor without calibration (common practice). */
  private static final double HALF_WIDTH = 0.025;

  /** The same as a standard uncertainty. */
  static final double RELATIVE = HALF_WIDTH / Math.sqrt(3);

  @Override
  public double corrected(double kilopascals) {
    return kilopascals;
  }

  @Override
  public List<Contribution> errors(double kilopascals) {
    return List.of(
        Contribution.of(
            "sensor",
            Input.rectangular(0, Math.abs(kilopascals) * HALF_WIDTH, "kPa"),
            "sensor without calibration: +-2.5 % of reading"));
  }

  @Override
  public Standing standing() {
    return Standing.ABSENT;
  }

  @Override
  public Optional<LocalDate> due() {
    return Optional.empty();
  }
}
