package org.thumbseal.fit;

import java.util.Optional;

/** Parameters that may be those of the least sum of squares, and how far from it they are. */
final class Candidate {
  /** Share of the residuals that may still lie along the curve. */
  private static final double RELATIVE_OFFSET = 1e-12;

  /** Share of the points themselves: the rounding of a fit without residuals. */
  private static final double ROUNDING = 1e-15;

  private final double[] parameters;
  private final double[] residuals;
  private final Jacobian jacobian;
  private final double[] step;
  private final double offset;

  private Candidate(Problem problem, double[] parameters, Jacobian jacobian) {
    this.parameters = parameters;
    this.residuals = problem.residuals(parameters);
    this.jacobian = jacobian;
    this.step = jacobian.solve(residuals);
    double enough = RELATIVE_OFFSET * Problem.norm(residuals) + ROUNDING * problem.ordinateNorm();
    this.offset = jacobian.lengthOf(step) / enough;
  }

  /** Empty where the points do not tell the parameters apart. */
  static Optional<Candidate> at(Problem problem, double[] parameters) {
    return Jacobian.of(problem.derivatives(parameters))
        .map(jacobian -> new Candidate(problem, parameters, jacobian));
  }

  /** What the curve could still move towards the points; 1 or less is a minimum. */
  double offset() {
    return offset;
  }

  /** The parameters after one undamped step. */
  double[] stepped() {
    double[] next = parameters.clone();
    for (int j = 0; j < next.length; j++) {
      next[j] += step[j];
    }
    return next;
  }

  FitResult result() {
    return new FitResult(parameters, jacobian.inverseOfNormalMatrix(), residuals);
  }
}
