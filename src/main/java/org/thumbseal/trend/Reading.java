package org.thumbseal.trend;

/**
 * One value of one test.
 *
 * @param day when, in days since 1970-01-01T00:00Z, with their fraction
 * @param value in the unit of its quantity
 * @param sensor what all values share whose common error cancels: the sensor and its calibration
 */
public record Reading(double day, double value, String sensor) {
  /** Refuses what is not a number. */
  public Reading {
    if (!Double.isFinite(day) || !Double.isFinite(value)) {
      throw new IllegalArgumentException("not a reading: " + value + " on day " + day);
    }
  }
}
