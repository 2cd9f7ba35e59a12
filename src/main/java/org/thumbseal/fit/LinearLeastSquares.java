package org.thumbseal.fit;

import java.util.BitSet;
import org.thumbseal.fit.FitOutcome.Converged;
import org.thumbseal.fit.FitOutcome.Reason;
import org.thumbseal.fit.FitOutcome.Refused;

/**
 * Polynomials of low degree through points: for smoothing over a short window and for straight
 * lines of calibration.
 *
 * <p>Parameter k of the result is the coefficient of (x - centre)^k: 0 is the level at the centre,
 * 1 the slope there.
 */
public final class LinearLeastSquares {
  private static final int MOST_ROUNDS = 30;

  private LinearLeastSquares() {}

  /**
   * Fits a polynomial.
   *
   * @param degree 0 to 3
   * @param centre the x that powers are counted from
   */
  public static FitOutcome polynomial(Points points, int degree, double centre) {
    return solve(new Problem(new Polynomial(degree, centre), points));
  }

  /**
   * Fits a polynomial to the points that are not single spikes.
   *
   * <p>Leaves out what lies more than {@value Spikes#DEVIATIONS} robust standard deviations off the
   * curve, and repeats with the curve through the rest until the choice stays the same. The
   * diagnostics of the result are those of the points kept.
   *
   * @param degree 0 to 3
   * @param centre the x that powers are counted from
   */
  public static FitOutcome robustPolynomial(Points points, int degree, double centre) {
    Problem whole = new Problem(new Polynomial(degree, centre), points);
    Spikes spikes = new Spikes(points);
    BitSet kept = new BitSet();
    kept.set(0, points.size());
    for (int round = 0; round < MOST_ROUNDS; round++) {
      FitOutcome outcome = solve(new Problem(whole.model(), points.only(kept)));
      BitSet inliers = outcome.result().map(r -> spikes.inliers(r, whole)).orElse(kept);
      if (inliers.equals(kept)) {
        return outcome;
      }
      kept = inliers;
    }
    return new Refused(Reason.NOT_CONVERGED);
  }

  private static FitOutcome solve(Problem problem) {
    if (problem.hasTooFewPoints()) {
      return new Refused(Reason.TOO_FEW_POINTS);
    }
    double[] zero = new double[problem.model().parameterCount()];
    return Candidate.at(problem, zero)
        .flatMap(first -> Candidate.at(problem, first.stepped()))
        .<FitOutcome>map(best -> new Converged(best.result()))
        .orElseGet(() -> new Refused(Reason.UNDETERMINED));
  }
}
