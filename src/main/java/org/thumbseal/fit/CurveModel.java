package org.thumbseal.fit;

/**
 * A curve y(x) that depends on a few parameters.
 *
 * <p>Parameters without physical meaning (a negative time constant) are answered with NaN: the fit
 * then takes a shorter step. Implementations are pure and use {@link StrictMath}, so that a fit is
 * the same bit for bit on every machine.
 */
public interface CurveModel {
  /** Number of parameters, one or more. */
  int parameterCount();

  /** The curve at x. */
  double value(double[] parameters, double x);

  /**
   * The partial derivatives of {@link #value} by each parameter.
   *
   * @param out receives one derivative for each parameter
   */
  void gradient(double[] parameters, double x, double[] out);
}
