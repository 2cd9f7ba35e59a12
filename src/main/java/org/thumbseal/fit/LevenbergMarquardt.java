package org.thumbseal.fit;

import java.util.Arrays;
import java.util.Optional;
import org.hipparchus.exception.MathRuntimeException;
import org.hipparchus.linear.Array2DRowRealMatrix;
import org.hipparchus.linear.ArrayRealVector;
import org.hipparchus.linear.RealMatrix;
import org.hipparchus.linear.RealVector;
import org.hipparchus.optim.nonlinear.vector.leastsquares.LeastSquaresFactory;
import org.hipparchus.optim.nonlinear.vector.leastsquares.LeastSquaresOptimizer;
import org.hipparchus.optim.nonlinear.vector.leastsquares.LeastSquaresProblem;
import org.hipparchus.optim.nonlinear.vector.leastsquares.LevenbergMarquardtOptimizer;
import org.hipparchus.util.Pair;

/**
 * The damped search from the start values, on parameters divided by the size of their start value.
 *
 * <p>Algorithm: Levenberg-Marquardt as in MINPACK lmder, by Hipparchus.
 */
final class LevenbergMarquardt {
  private static final int MOST_EVALUATIONS = 200;
  private static final double TOLERANCE = 1e-12;

  /**
   * Stands for a curve that does not exist at some parameters. The search shortens its step where
   * the misfit grows; from what is not a number it would not come back.
   */
  private static final double FAR = 1e6;

  private final Problem problem;
  private final double[] scale;

  LevenbergMarquardt(Problem problem, double[] start) {
    this.problem = problem;
    this.scale = Arrays.stream(start).map(p -> p == 0 ? 1 : Math.abs(p)).toArray();
  }

  /** Where the search ended, close to a minimum; empty where it went astray. */
  Optional<double[]> search(double[] start) {
    try {
      LeastSquaresOptimizer.Optimum optimum = optimizer().optimize(searchFrom(start));
      return Optional.of(unscaled(optimum.getPoint()));
    } catch (MathRuntimeException e) {
      return Optional.empty();
    }
  }

  private static LevenbergMarquardtOptimizer optimizer() {
    return new LevenbergMarquardtOptimizer()
        .withCostRelativeTolerance(TOLERANCE)
        .withParameterRelativeTolerance(TOLERANCE)
        .withOrthoTolerance(TOLERANCE);
  }

  private LeastSquaresProblem searchFrom(double[] start) {
    RealVector ordinates = new ArrayRealVector(problem.points().size());
    for (int i = 0; i < ordinates.getDimension(); i++) {
      ordinates.setEntry(i, problem.points().y(i));
    }
    RealVector first = new ArrayRealVector(start).ebeDivide(new ArrayRealVector(scale));
    return LeastSquaresFactory.create(
        this::evaluate, ordinates, first, null, MOST_EVALUATIONS, MOST_EVALUATIONS);
  }

  private Pair<RealVector, RealMatrix> evaluate(RealVector scaled) {
    double[] parameters = unscaled(scaled);
    double[] values = new double[problem.points().size()];
    Arrays.setAll(
        values, i -> finite(problem.model().value(parameters, problem.points().x(i)), FAR));
    double[][] rows = problem.derivatives(parameters);
    for (double[] row : rows) {
      Arrays.setAll(row, j -> finite(row[j] * scale[j], 0));
    }
    return new Pair<>(new ArrayRealVector(values), new Array2DRowRealMatrix(rows, false));
  }

  private static double finite(double value, double otherwise) {
    return Double.isFinite(value) ? value : otherwise;
  }

  private double[] unscaled(RealVector scaled) {
    double[] parameters = scaled.toArray();
    Arrays.setAll(parameters, j -> parameters[j] * scale[j]);
    return parameters;
  }
}
