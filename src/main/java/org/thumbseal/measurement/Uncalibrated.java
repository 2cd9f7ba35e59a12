package org.thumbseal.measurement;

import java.time.LocalDate;
import java.util.List;
import java.util.Optional;

/** A low-cost sensor without a calibration: its readings are taken as they are. */
record Uncalibrated() implements SensorCalibration {
  /** +-2.5 % of reading, rectangular: a low-cost sensor without calibration (common practice). */
  static final double RELATIVE = 0.025 / Math.sqrt(3);

  @Override
  public double corrected(double kilopascals) {
    return kilopascals;
  }

  @Override
  public List<Contribution> errors(double kilopascals) {
    return List.of(
        new Contribution(
            "sensor",
            Math.abs(kilopascals) * RELATIVE,
            "sensor without calibration, +-2.5 % of reading, rectangular"));
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
