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
   * curve, and repeats with the curve through the rest until the choice stays the same (or {@value
   * #MOST_ROUNDS} times: a point on the edge may come and go). The diagnostics of the result are
   * those of the points kept.
   *
   * @param degree 0 to 3
   * @param centre the x that powers are counted from
   */
  public static FitOutcome robustPolynomial(Points points, int degree, double centre) {
    Problem whole = new Problem(new Polynomial(degree, centre), points);
    Spikes spikes = new Spikes(points);
    BitSet kept = new BitSet();
    BitSet next = new BitSet();
    next.set(0, points.size());
    FitOutcome outcome = new Refused(Reason.TOO_FEW_POINTS);
    for (int round = 0; round < MOST_ROUNDS && !next.equals(kept); round++) {
      kept = next;
      outcome = solve(new Problem(whole.model(), points.only(kept)));
      next = outcome.result().map(r -> spikes.inliers(r, whole)).orElse(kept);
    }
    return outcome;
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
