package org.thumbseal.measurement;

import java.util.ArrayList;
import java.util.List;

/**
 * What a sensor adds to the uncertainty of a vacuum.
 *
 * @param calibration what is known of its scale
 * @param resolution step of the readings, kPa
 * @param zero standard uncertainty of the zero, kPa
 * @param zeroSource how the zero is known
 */
record SensorErrors(
    SensorCalibration calibration, double resolution, double zero, String zeroSource) {

  /** The budget of a vacuum against the zero. */
  List<Contribution> ofLevel(double kilopascals, double noise, String noiseSource) {
    List<Contribution> budget = new ArrayList<>(calibration.errors(kilopascals));
    budget.add(new Contribution("zero", zero, zeroSource));
    budget.add(new Contribution("resolution", resolution / Math.sqrt(12), "step of the readings"));
    budget.add(new Contribution("noise", noise, noiseSource));
    return budget;
  }

  /**
   * Standard uncertainty of a difference of two vacuums, kPa. The zero and all else that is common
   * to both ends cancels; of the scale the share of the difference stays.
   */
  double ofRise(double kilopascals) {
    return Math.hypot(
        calibration.standardUncertainty(kilopascals), resolution * Math.sqrt(2.0 / 12));
  }
}
