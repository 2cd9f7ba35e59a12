package org.thumbseal.calibration;

import java.util.List;
import org.thumbseal.fit.FitResult;
import org.thumbseal.fit.LinearLeastSquares;
import org.thumbseal.fit.Points;

/**
 * A straight line through points by least squares, with its covariance (JCGM 100:2008, H.3).
 *
 * @param level at the mean abscissa
 * @param slope of the line
 * @param mean of the abscissas
 * @param spread sum of the squared distances of the abscissas from their mean
 * @param count number of points
 * @param residual standard deviation of the points about the line, two degrees of freedom taken
 *     off; 0 for two points, which have none
 * @param scatter standard deviation of a point that the covariance rests on
 */
public record StraightLine(
    double level,
    double slope,
    double mean,
    double spread,
    int count,
    double residual,
    double scatter) {

  /**
   * The line through two points or more with different abscissas.
   *
   * @param leastScatter standard deviation that a point has whatever the residuals say: they say
   *     nothing with two points and little with three
   */
  static StraightLine through(List<CalibrationPoint> points, double leastScatter) {
    double mean = points.stream().mapToDouble(CalibrationPoint::sensor).average().orElseThrow();
    double spread = points.stream().mapToDouble(p -> square(p.sensor() - mean)).sum();
    if (points.size() == 2) {
      CalibrationPoint one = points.get(0);
      CalibrationPoint other = points.get(1);
      double slope = (other.reference() - one.reference()) / (other.sensor() - one.sensor());
      double level = (one.reference() + other.reference()) / 2;
      return new StraightLine(level, slope, mean, spread, 2, 0, leastScatter);
    }
    FitResult fit = fit(points, mean);
    double residual = fit.residualStandardDeviation();
    return new StraightLine(
        fit.parameter(0),
        fit.parameter(1),
        mean,
        spread,
        points.size(),
        residual,
        Math.max(residual, leastScatter));
  }

  private static FitResult fit(List<CalibrationPoint> points, double mean) {
    double[] x = points.stream().mapToDouble(CalibrationPoint::sensor).toArray();
    double[] y = points.stream().mapToDouble(CalibrationPoint::reference).toArray();
    return LinearLeastSquares.polynomial(Points.of(x, y), 1, mean).result().orElseThrow();
  }

  private static double square(double value) {
    return value * value;
  }

  /** The line at an abscissa. */
  public double at(double x) {
    return level + slope * (x - mean);
  }

  /** Variance of the line at an abscissa. */
  public double varianceAt(double x) {
    return square(scatter) * (1.0 / count + square(x - mean) / spread);
  }

  /** Variance of the slope. */
  public double slopeVariance() {
    return square(scatter) / spread;
  }

  /** Covariance of the line at an abscissa with the slope. */
  public double covarianceAt(double x) {
    return square(scatter) * (x - mean) / spread;
  }
}
