package org.thumbseal.seek;

/**
 * The highest vacuum of one test, its uncertainty parted into what it has alone and what it shares
 * with the other tests of the same sensor.
 *
 * @param kilopascals vacuum, kPa
 * @param own standard uncertainty that belongs to this test alone, kPa: noise, zero, resolution
 * @param scale what turns all readings of the sensor alike
 */
public record Level(double kilopascals, double own, Scale scale) {
  /**
   * Error of a sensor's scale.
   *
   * @param sensor which, and by which calibration it was read; tests of the same have the same
   *     error
   * @param relative standard uncertainty as a share of the reading
   */
  public record Scale(String sensor, double relative) {}

  /** Refuses what is no number. */
  public Level {
    if (!(Math.abs(kilopascals) < 1_000 && own >= 0 && scale.relative() >= 0)) {
      throw new IllegalArgumentException("no vacuum: " + kilopascals);
    }
  }
}
