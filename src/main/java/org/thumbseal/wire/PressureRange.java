package org.thumbseal.wire;

/**
 * Ends of what a sensor can send.
 *
 * @param lowPascals lower end, Pa, gauge (negative under vacuum) or absolute
 * @param highPascals upper end, Pa
 */
public record PressureRange(double lowPascals, double highPascals) {
  /** Gauge: no air in the world presses with more than 110 kPa, and nobody blows that hard. */
  private static final PressureRange GAUGE = new PressureRange(-110_000, 110_000);

  /** Absolute: from a zero that is somewhat off, up to the same above the highest ambient. */
  private static final PressureRange ABSOLUTE = new PressureRange(-5_000, 220_000);

  /** What cannot be more wrong than a sensor is. */
  static PressureRange any(PressureSense sense) {
    return sense == PressureSense.ABSOLUTE ? ABSOLUTE : GAUGE;
  }

  boolean holds(double pascals) {
    return pascals >= lowPascals && pascals <= highPascals;
  }
}
