package org.thumbseal.measurement;

import java.util.ArrayList;
import java.util.List;
import org.thumbseal.measurement.Contribution.Input;
import org.thumbseal.measurement.Quality.Zero;

/**
 * What a sensor adds to the uncertainty of a vacuum.
 *
 * @param calibration what is known of its scale
 * @param resolution step of the readings, kPa
 * @param zero what was taken off
 * @param noise standard deviation of the readings, kPa
 */
record SensorErrors(SensorCalibration calibration, double resolution, Zero zero, double noise) {

  /** The budget of a vacuum against the zero, from the standard error of its mean reading. */
  List<Contribution> ofLevel(double kilopascals, double meanError, String meanSource) {
    double reading = kilopascals + zero.kilopascals();
    List<Contribution> budget = new ArrayList<>();
    budget.add(Contribution.of("reading", Input.normal(reading, meanError, "kPa"), meanSource));
    budget.addAll(calibration.errors(kilopascals));
    budget.add(new Contribution("zero", zero.input(), -1, zero.source()));
    budget.add(
        Contribution.of(
            "resolution",
            Input.rectangular(0, undithered() / 2, "kPa"),
            "half a step of the readings, less what noise smooths out of a mean"));
    return budget;
  }

  /**
   * The budget of a difference of two vacuums, kPa. The zero and all else that is common to both
   * ends cancels; of the scale the share of the difference stays.
   */
  List<Contribution> ofRise(double kilopascals) {
    List<Contribution> budget = new ArrayList<>(calibration.errors(kilopascals));
    budget.add(
        Contribution.of(
            "resolution",
            Input.triangular(0, resolution, "kPa"),
            "half a step of the readings at both ends"));
    return budget;
  }

  /**
   * The step, kPa, as far as noise does not smooth it out of a mean. The first harmonic of the
   * error of a quantiser, which is most of it, falls by exp(-2 pi^2 s^2/q^2) (Widrow and Kollar,
   * Quantization Noise, from memory). Of the scatter of readings a step of q is q^2/12 itself.
   */
  private double undithered() {
    double square = Math.max(0, noise * noise - resolution * resolution / 12);
    double steps = resolution > 0 ? square / (resolution * resolution) : 0;
    return resolution * StrictMath.exp(-2 * Math.PI * Math.PI * steps);
  }
}
