package org.thumbseal.measurement;

import java.time.LocalDate;
import java.util.List;
import java.util.Optional;

/**
 * What is known of the errors of a sensor's scale. Its zero is no part of it: each test finds that
 * anew.
 */
public interface SensorCalibration {
  /** A sensor of which nothing is known. */
  static SensorCalibration none() {
    return new Uncalibrated();
  }

  /** Where a calibration stands at the time of a test. */
  enum Standing {
    /** There is none. */
    ABSENT,
    /** It is within its term. */
    VALID,
    /** Its term is over. */
    OVERDUE
  }

  /**
   * A reading on the true scale. Only differences of such values mean anything.
   *
   * @param kilopascals vacuum as the sensor reads it, kPa
   * @return kPa
   */
  double corrected(double kilopascals);

  /**
   * The errors of a difference between a corrected reading and the corrected reading at rest, as
   * lines of a budget in kPa; names begin with {@code sensor} or {@code calibration}.
   *
   * @param kilopascals the difference, kPa
   */
  List<Contribution> errors(double kilopascals);

  /** Combined standard uncertainty of such a difference, kPa. */
  default double standardUncertainty(double kilopascals) {
    return new Budgeted(kilopascals, "kPa", errors(kilopascals)).standardUncertainty();
  }

  /** Where it stood at the time of the test. */
  Standing standing();

  /** The last day of its term; empty where there is none. */
  Optional<LocalDate> due();
}
