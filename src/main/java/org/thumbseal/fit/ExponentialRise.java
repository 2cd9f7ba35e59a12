package org.thumbseal.fit;

/**
 * y = open + (asymptote - open)(1 - exp(-(x - onset)/tau)).
 *
 * <p>A pump limited by its dead volume empties a jar of constant temperature along this curve; tau
 * is then jar volume over pumping speed. The formula is not cut at the onset: points before it
 * would be fitted to its continuation, so give only points of the rise.
 *
 * @param open the level before the onset, known beforehand, in the unit of y
 */
public record ExponentialRise(double open) implements CurveModel {
  /** Index of the level the curve tends to, in the unit of y. */
  public static final int ASYMPTOTE = 0;

  /** Index of the time constant, in the unit of x; positive. */
  public static final int TAU = 1;

  /** Index of the x at which the curve leaves {@code open}. */
  public static final int ONSET = 2;

  @Override
  public int parameterCount() {
    return 3;
  }

  @Override
  public double value(double[] p, double x) {
    return p[TAU] > 0 ? open + (p[ASYMPTOTE] - open) * (1 - remaining(p, x)) : Double.NaN;
  }

  @Override
  public void gradient(double[] p, double x, double[] out) {
    double remaining = remaining(p, x);
    double slope = (p[ASYMPTOTE] - open) * remaining / p[TAU];
    out[ASYMPTOTE] = 1 - remaining;
    out[TAU] = -slope * (x - p[ONSET]) / p[TAU];
    out[ONSET] = -slope;
  }

  private static double remaining(double[] p, double x) {
    return StrictMath.exp(-(x - p[ONSET]) / p[TAU]);
  }
}
