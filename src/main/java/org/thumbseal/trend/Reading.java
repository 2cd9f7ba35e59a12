package org.thumbseal.trend;

/**
 * One value of one test.
 *
 * @param day when, in days since 1970-01-01T00:00Z, with their fraction
 * @param value in the unit of its quantity
 * @param sensor what all values share whose common error cancels: the sensor and its calibration
 * @param common how large that common error may be, in the unit of the value: the expanded
 *     uncertainty is an upper bound; infinity where nothing is known of it
 */
public record Reading(double day, double value, String sensor, double common) {
  /** Refuses what is not a number. */
  public Reading {
    if (!Double.isFinite(day) || !Double.isFinite(value) || !(common >= 0)) {
      throw new IllegalArgumentException("not a reading: " + value + " on day " + day);
    }
  }

  /** By a sensor of whose error nothing is known. */
  public Reading(double day, double value, String sensor) {
    this(day, value, sensor, Double.POSITIVE_INFINITY);
  }
}
