package org.thumbseal.wire;

import java.util.OptionalInt;
import java.util.OptionalLong;

/** What one good line says. */
public sealed interface WireRecord {

  /** Highest value of the sample counter and of the device clock; both wrap to 0 after it. */
  long UINT32_MAX = 0xFFFF_FFFFL;

  /** Whether the sensor reads against ambient pressure or against vacuum. */
  enum Reference {
    GAUGE,
    ABSOLUTE
  }

  /**
   * Who speaks.
   *
   * @param sensorId name of the sensor
   * @param firmware version of its firmware
   * @param reference gauge or absolute
   * @param lowPascals lower end of the range, Pa
   * @param highPascals upper end of the range, Pa
   * @param hertz nominal sampling rate, Hz
   */
  record Identity(
      String sensorId,
      String firmware,
      Reference reference,
      int lowPascals,
      int highPascals,
      double hertz)
      implements WireRecord {}

  /**
   * One reading.
   *
   * @param counter sample counter, 0 to 2^32-1, wrapping
   * @param micros device clock in microseconds, 0 to 2^32-1, wrapping
   * @param pascals pressure in Pa; a gauge sensor is negative under vacuum
   */
  record Reading(long counter, long micros, int pascals) implements WireRecord {}

  /**
   * The weather at the sensor.
   *
   * @param micros device clock, microseconds
   * @param pascals barometric pressure, Pa, if known
   * @param centiCelsius temperature in 0.01 degC, if known
   */
  record Ambient(long micros, OptionalInt pascals, OptionalInt centiCelsius)
      implements WireRecord {}

  /**
   * The start key.
   *
   * @param micros device clock, microseconds
   * @param pressed pressed, or let go
   */
  record StartKey(long micros, boolean pressed) implements WireRecord {}

  /**
   * A fault the sensor saw itself.
   *
   * @param micros device clock, microseconds
   * @param code {@code ADC}, {@code RANGE}, {@code POWER}, {@code TEMP} or the maker's own
   */
  record Fault(long micros, String code) implements WireRecord {}

  /** A record type of the future, or of a maker's own: kept in the capture, counted, skipped. */
  record Unknown() implements WireRecord {}

  /**
   * A reading on a line without checksum and counter.
   *
   * @param micros the sensor's own time in microseconds, where it prints one
   * @param pascals pressure in Pa; a gauge sensor is negative under vacuum
   */
  record Plain(OptionalLong micros, double pascals) implements WireRecord {}
}
