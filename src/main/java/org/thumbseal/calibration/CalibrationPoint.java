package org.thumbseal.calibration;

/**
 * What sensor and reference gauge read at the same vacuum.
 *
 * @param sensor vacuum as the sensor reads it, kPa; may be a little below 0
 * @param reference vacuum as the reference reads it, kPa, 0 to 101.325
 */
public record CalibrationPoint(double sensor, double reference) {}
