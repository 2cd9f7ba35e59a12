package org.thumbseal.simulate;

/**
 * One line as it leaves the sensor.
 *
 * @param seconds true time since the first sample, s
 * @param line with its checksum, without its end
 */
record SentLine(double seconds, String line) {}
