package org.thumbseal.measurement;

import java.util.Optional;
import org.thumbseal.fit.ExponentialRise;
import org.thumbseal.fit.FitResult;
import org.thumbseal.fit.LeastSquares;
import org.thumbseal.quantity.Quantity;

/**
 * The plain exponential through the rise: a description of the curve, not the pump; nothing is
 * graded on it.
 *
 * @param timeConstant s
 * @param asymptote above the zero, kPa
 * @param rms misfit, kPa
 * @param lag1 autocorrelation of neighbouring residuals, -1 to 1
 * @param distrust why it is not to be relied on; empty when it is
 */
public record Exponential(
    Quantity timeConstant, Quantity asymptote, double rms, double lag1, Optional<String> distrust) {
  private static final double SHORTEST_IN_TAU = 2.5;
  private static final double LARGEST_LAG1 = 0.5;

  /** Runs of one sign: so many standard deviations too few are not chance. */
  private static final double FEWEST_RUNS = -5;

  private static final double LARGEST_MISFIT_IN_NOISE = 2;
  private static final double FIRST_SHARE = 0.1;
  private static final int POINTS = 800;

  /** The blocked part of a test, zero taken off. */
  record Rise(Curve curve, double open, double maximum, double noise) {}

  static Optional<Exponential> of(Rise rise, double onset) {
    Curve part = withoutBegin(rise).thinned(POINTS);
    if (part.size() < 8) {
      return Optional.empty();
    }
    double span = part.lastTime() - onset;
    double[] start = {rise.maximum(), span / 4, onset};
    return LeastSquares.fit(new ExponentialRise(rise.open()), part.points(), start)
        .result()
        .filter(f -> f.parameter(ExponentialRise.TAU) < 100 * span)
        .map(f -> of(f, rise, span));
  }

  /**
   * The first tenth is left out: strokes, the hand on the inlet and the first cooling are in it.
   */
  private static Curve withoutBegin(Rise rise) {
    Curve curve = rise.curve();
    double limit = rise.open() + FIRST_SHARE * (rise.maximum() - rise.open());
    int first = 0;
    while (first < curve.size() && curve.level(first) < limit) {
      first++;
    }
    return first == curve.size()
        ? curve.between(0, 0)
        : curve.between(curve.time(first), curve.lastTime() + 1e-9);
  }

  private static Exponential of(FitResult fit, Rise rise, double span) {
    double tau = fit.parameter(ExponentialRise.TAU);
    return new Exponential(
        Quantity.seconds(tau, fit.standardError(ExponentialRise.TAU)),
        Quantity.kilopascals(
            fit.parameter(ExponentialRise.ASYMPTOTE), fit.standardError(ExponentialRise.ASYMPTOTE)),
        fit.rms(),
        fit.lag1Autocorrelation(),
        distrust(fit, rise, span / tau));
  }

  private static Optional<String> distrust(FitResult fit, Rise rise, double spanInTau) {
    if (spanInTau < SHORTEST_IN_TAU) {
      return Optional.of("too short: the record covers less than 2.5 time constants");
    }
    if (fit.rms() > Math.max(0.05, LARGEST_MISFIT_IN_NOISE * rise.noise())) {
      return Optional.of("misfit: the curve is not one exponential");
    }
    return fit.lag1Autocorrelation() > LARGEST_LAG1 || fit.runsDeviation() < FEWEST_RUNS
        ? Optional.of("autocorrelation: neighbouring residuals go the same way")
        : Optional.empty();
  }
}
