package org.thumbseal.calibration;

import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneOffset;
import java.util.Optional;

/**
 * When and how a sensor was calibrated.
 *
 * @param sensor id of the sensor, as it says it
 * @param calibratedAt when
 * @param due last day, UTC, on which it is to be relied on
 * @param reference the gauge it was held against
 * @param repeatability half width, rectangular, of what a pair read with care scatters by, kPa
 * @param temperature of the room, degrees Celsius
 * @param by who did it
 */
public record CalibrationFacts(
    String sensor,
    Instant calibratedAt,
    LocalDate due,
    ReferenceGauge reference,
    double repeatability,
    Optional<Double> temperature,
    Optional<String> by) {
  /** +-0.1 kPa: two displays read one after the other (common practice, no published source). */
  public static final double USUAL_REPEATABILITY = 0.1;

  private static final double LARGEST_REPEATABILITY = 2;

  /** The day of the calibration, UTC. */
  public LocalDate date() {
    return LocalDate.ofInstant(calibratedAt, ZoneOffset.UTC);
  }

  void check() throws CalibrationRefused {
    if (sensor.isBlank()) {
      throw new CalibrationRefused("say which sensor was calibrated");
    }
    if (!due.isAfter(date())) {
      throw new CalibrationRefused(
          "the due date %s must be after the calibration, %s", due, date());
    }
    if (!(repeatability > 0 && repeatability <= LARGEST_REPEATABILITY)) {
      throw new CalibrationRefused(
          "the repeatability must be above 0 and at most %.0f kPa, not %s kPa",
          LARGEST_REPEATABILITY, repeatability);
    }
    if (temperature.filter(t -> !(t >= -40 && t <= 85)).isPresent()) {
      throw new CalibrationRefused(
          "the temperature must be between -40 and 85 degrees Celsius, not %s", temperature.get());
    }
    reference.check();
  }
}
