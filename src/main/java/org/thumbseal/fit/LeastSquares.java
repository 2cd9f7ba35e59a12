package org.thumbseal.fit;

import java.util.Arrays;
import java.util.Optional;
import org.thumbseal.fit.FitOutcome.Converged;
import org.thumbseal.fit.FitOutcome.Reason;
import org.thumbseal.fit.FitOutcome.Refused;

/**
 * Least squares for curves that are not linear in their parameters.
 *
 * <p>A damped search (Levenberg-Marquardt) is followed by undamped Gauss-Newton steps. The fit
 * counts as converged by the relative offset of Bates and Watts (Technometrics 23, 1981): what the
 * curve could still move towards the points, against what stays between it and them.
 */
public final class LeastSquares {
  private static final int MOST_POLISHING_STEPS = 30;

  /** A fit that rounding keeps from the last digits is still sound at this many offsets. */
  private static final double SOUND = 1e6;

  private LeastSquares() {}

  /**
   * Fits a curve to points.
   *
   * @param start one finite value for each parameter, near enough to begin from; its size also
   *     tells the size of the parameter
   * @throws IllegalArgumentException if the start values are not of the model
   */
  public static FitOutcome fit(CurveModel model, Points points, double[] start) {
    if (start.length != model.parameterCount()
        || !Arrays.stream(start).allMatch(Double::isFinite)) {
      throw new IllegalArgumentException("not start values: " + Arrays.toString(start));
    }
    Problem problem = new Problem(model, points);
    if (problem.hasTooFewPoints()) {
      return new Refused(Reason.TOO_FEW_POINTS);
    }
    boolean exists = Arrays.stream(problem.residuals(start)).allMatch(Double::isFinite);
    return exists ? search(problem, start) : new Refused(Reason.NOT_CONVERGED);
  }

  private static FitOutcome search(Problem problem, double[] start) {
    Optional<double[]> end = new LevenbergMarquardt(problem, start).search(start);
    if (end.isEmpty()) {
      return new Refused(Reason.NOT_CONVERGED);
    }
    return Candidate.at(problem, end.get())
        .map(found -> judge(polish(problem, found)))
        .orElseGet(() -> new Refused(Reason.UNDETERMINED));
  }

  private static Candidate polish(Problem problem, Candidate found) {
    Candidate best = found;
    for (int i = 0; i < MOST_POLISHING_STEPS && !(best.offset() <= 1); i++) {
      double reached = best.offset();
      Optional<Candidate> next =
          Candidate.at(problem, best.stepped()).filter(c -> c.offset() < reached);
      if (next.isEmpty()) {
        return best;
      }
      best = next.get();
    }
    return best;
  }

  private static FitOutcome judge(Candidate best) {
    return best.offset() <= SOUND
        ? new Converged(best.result())
        : new Refused(Reason.NOT_CONVERGED);
  }
}
