package org.thumbseal.phase;

/**
 * The mean vacuum of a short stretch, spikes of a single sample left out.
 *
 * @param seconds device time of its first sample, s
 * @param kilopascals vacuum on the sensor's own zero, kPa
 */
record Slot(double seconds, double kilopascals) {}
