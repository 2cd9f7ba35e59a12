package org.thumbseal.grade;

import static org.thumbseal.grade.Judged.number;

import java.util.Comparator;
import org.thumbseal.measurement.Budgeted;
import org.thumbseal.measurement.Contribution;
import org.thumbseal.measurement.SensorCalibration;

/**
 * What would settle a value that is too near a limit to tell.
 *
 * @param value with its budget
 * @param distance of the value from the limit, in the value's unit: so small U would have to be
 * @param calibration of the sensor
 */
record Remedy(Budgeted value, double distance, SensorCalibration calibration) {
  /** What is left after a calibration with a good gauge, as a share of a vacuum, about. */
  private static final double AFTER_CALIBRATION = 0.006;

  private static final double COVERAGE = 2;

  /** The U that it takes, what most of the present one is, and what to do about it. */
  String text() {
    return number(
            "To tell takes U of %.2f %s or less, not %.2f %s. ",
            distance, value.unit(), COVERAGE * value.standardUncertainty(), value.unit())
        + advice();
  }

  private String advice() {
    double sensor = squares(true);
    double rest = squares(false);
    return sensor > rest
        ? ofSensor() + (isTooMuch(rest) ? " Then repeat the test as well." : "")
        : "Most of it is "
            + largestOfTheRest()
            + (isTooMuch(sensor)
                ? " Then calibrate the sensor as well (thumbseal calibrate)."
                : "");
  }

  /** Whether this part of the budget is too much by itself. */
  private boolean isTooMuch(double squares) {
    return COVERAGE * Math.sqrt(squares) > distance;
  }

  private String ofSensor() {
    return switch (calibration.standing()) {
      case ABSENT ->
          "Most of it is the sensor, which is not calibrated: calibrate it (thumbseal calibrate),"
              + " then grade this recording again."
              + (isHopeless() ? " So near the limit even that may not tell." : "");
      case OVERDUE ->
          "Most of it is the sensor, whose calibration is overdue: calibrate it again (thumbseal"
              + " calibrate).";
      case VALID ->
          "Most of it is the calibration of the sensor: calibrate it again (thumbseal calibrate)"
              + " with a better gauge, and with points up to this vacuum.";
    };
  }

  private boolean isHopeless() {
    return value.unit().equals("kPa") && distance < AFTER_CALIBRATION * value.value();
  }

  private String largestOfTheRest() {
    String name =
        value.budget().stream()
            .filter(c -> !isOfSensor(c))
            .max(Comparator.comparingDouble(Contribution::standardUncertainty))
            .map(Contribution::name)
            .orElse("noise");
    return switch (name) {
      case "zero" ->
          "the zero of the sensor: repeat the test, and leave the pump off for 5 s at its beginning.";
      case "resolution" -> "the step of the sensor's readings: take a sensor with a finer one.";
      case "clock" -> "the clock of the sensor: repeat the test in a longer recording.";
      default -> "this recording (" + name + "): repeat the test, with a longer hold.";
    };
  }

  private double squares(boolean ofSensor) {
    return value.budget().stream()
        .filter(c -> isOfSensor(c) == ofSensor)
        .mapToDouble(c -> c.standardUncertainty() * c.standardUncertainty())
        .sum();
  }

  private static boolean isOfSensor(Contribution line) {
    return line.name().startsWith("sensor") || line.name().startsWith("calibration");
  }
}
