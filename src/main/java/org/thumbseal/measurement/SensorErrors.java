package org.thumbseal.measurement;

import java.util.List;

/**
 * What a sensor adds to the uncertainty of a vacuum.
 *
 * @param relative standard uncertainty of a reading, as a share of it
 * @param resolution step of the readings, kPa
 * @param zero standard uncertainty of the zero, kPa
 * @param zeroSource how the zero is known
 */
record SensorErrors(double relative, double resolution, double zero, String zeroSource) {
  /** +-2.5 % of reading, rectangular: a low-cost sensor without calibration (common practice). */
  static final double UNCALIBRATED = 0.025 / Math.sqrt(3);

  private static final String GAIN_SOURCE =
      "sensor without calibration, +-2.5 % of reading, rectangular";

  /** The budget of a vacuum against the zero. */
  List<Contribution> ofLevel(double kilopascals, double noise, String noiseSource) {
    return List.of(
        new Contribution("sensor", Math.abs(kilopascals) * relative, GAIN_SOURCE),
        new Contribution("zero", zero, zeroSource),
        new Contribution("resolution", resolution / Math.sqrt(12), "step of the readings"),
        new Contribution("noise", noise, noiseSource));
  }

  /**
   * Standard uncertainty of a difference of two vacuums, kPa. The zero and all else that is common
   * to both ends cancels; of the gain the share of the difference stays.
   */
  double ofRise(double kilopascals) {
    return Math.hypot(kilopascals * relative, resolution * Math.sqrt(2.0 / 12));
  }
}
