package org.thumbseal.index;

import java.time.Instant;
import java.time.LocalDate;
import java.util.Optional;

/**
 * A calibration of a sensor.
 *
 * @param id of the document
 * @param sensor id of the sensor
 * @param calibratedAt when
 * @param due the day after which it is overdue
 * @param by who made it
 */
public record IndexedCalibration(
    String id, String sensor, Instant calibratedAt, Optional<LocalDate> due, Optional<String> by) {}
