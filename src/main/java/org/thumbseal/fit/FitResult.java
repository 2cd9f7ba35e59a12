package org.thumbseal.fit;

/**
 * The parameters of least squares with their covariance, and what the residuals say of the fit.
 *
 * <p>Standard errors rest on the scatter found, s2 = residual sum of squares / degrees of freedom,
 * and take the errors of the points for independent; a {@link #lag1Autocorrelation} well away from
 * zero says that they are not, or that the curve has another shape.
 */
public final class FitResult {
  private final double[] parameters;
  private final double[][] inverse;
  private final double[] residuals;
  private final double sumOfSquares;

  /**
   * Takes ownership of the arrays.
   *
   * @param parameters best values
   * @param inverse (J'J)^-1, the covariance for points of unit variance
   * @param residuals point minus curve, in order of the points
   */
  FitResult(double[] parameters, double[][] inverse, double[] residuals) {
    this.parameters = parameters;
    this.inverse = inverse;
    this.residuals = residuals;
    this.sumOfSquares = sumOfProducts(residuals, 0);
  }

  /** Best value of a parameter, counted from 0. */
  public double parameter(int index) {
    return parameters[index];
  }

  /** All best values, as a copy. */
  public double[] parameters() {
    return parameters.clone();
  }

  /** Standard error of a parameter, in its own unit. */
  public double standardError(int index) {
    return Math.sqrt(covariance(index, index));
  }

  /** Covariance of two parameters, in the product of their units. */
  public double covariance(int row, int column) {
    return inverse[row][column] * residualVariance();
  }

  /** Correlation of two parameters, -1 to 1; it holds for a fit without misfit too. */
  public double correlation(int row, int column) {
    return inverse[row][column] / Math.sqrt(inverse[row][row] * inverse[column][column]);
  }

  /** Sum of the squared residuals. */
  public double residualSumOfSquares() {
    return sumOfSquares;
  }

  /** Number of points that were fitted, less the number of parameters; 1 or more. */
  public int degreesOfFreedom() {
    return residuals.length - parameters.length;
  }

  /** s: root of the residual sum of squares over the degrees of freedom, in the unit of y. */
  public double residualStandardDeviation() {
    return Math.sqrt(residualVariance());
  }

  /** Root mean square of the residuals, in the unit of y. */
  public double rms() {
    return Math.sqrt(sumOfSquares / residuals.length);
  }

  /** Sum of products of neighbouring residuals over their sum of squares; 0 for an exact fit. */
  public double lag1Autocorrelation() {
    return sumOfSquares > 0 ? sumOfProducts(residuals, 1) / sumOfSquares : 0;
  }

  /**
   * By how many standard deviations there are more runs of residuals of one sign than in a random
   * order (Wald and Wolfowitz, Annals of Mathematical Statistics 11, 1940): far below zero where
   * the curve has another shape than the points, however small the misfit. 0 where one sign is
   * missing.
   */
  public double runsDeviation() {
    double above = 0;
    double runs = 1;
    for (int i = 0; i < residuals.length; i++) {
      above += residuals[i] > 0 ? 1 : 0;
      runs += i > 0 && residuals[i] > 0 != residuals[i - 1] > 0 ? 1 : 0;
    }
    double pairs = 2 * above * (residuals.length - above);
    double n = residuals.length;
    double variance = pairs * (pairs - n) / (n * n * (n - 1));
    return variance > 0 ? (runs - pairs / n - 1) / Math.sqrt(variance) : 0;
  }

  /** Number of points that were fitted. */
  public int size() {
    return residuals.length;
  }

  /** A point minus the curve, in the unit of y. */
  public double residual(int index) {
    return residuals[index];
  }

  private double residualVariance() {
    return sumOfSquares / degreesOfFreedom();
  }

  private static double sumOfProducts(double[] values, int lag) {
    double sum = 0;
    for (int i = lag; i < values.length; i++) {
      sum += values[i] * values[i - lag];
    }
    return sum;
  }
}
