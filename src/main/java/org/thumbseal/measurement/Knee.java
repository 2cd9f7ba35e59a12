package org.thumbseal.measurement;

import java.util.Optional;

/**
 * Least squares of a level that turns into a parabola: zero before the knee, a x + b x2 after it,
 * with x the time since the knee.
 *
 * <p>The place of the knee is searched; a and b follow from it in closed form. A parabola is enough
 * for the first part of a rise, and unlike an exponential it does not mind that the gas, cooling at
 * first, makes the rise steeper there.
 *
 * @param seconds place of the knee, s
 * @param standardUncertainty s, from the scatter about the fit
 */
record Knee(double seconds, double standardUncertainty) {
  private static final int GRID = 60;
  private static final int NARROWINGS = 4;
  private static final double MOST_ALIKE = 0.9;

  /** The knee between two times, if there is one. */
  static Optional<Knee> of(Curve curve, double earliest, double latest) {
    double best = earliest;
    double step = (latest - earliest) / GRID;
    double from = earliest;
    for (int round = 0; round < NARROWINGS; round++) {
      best = lowest(curve, from, step);
      from = best - step;
      step = 2 * step / GRID;
    }
    boolean atEdge = best <= earliest || best >= latest;
    return atEdge || !isClimbing(curve, best) ? Optional.empty() : Optional.of(at(curve, best));
  }

  private static double lowest(Curve curve, double from, double step) {
    double best = from;
    double least = Double.POSITIVE_INFINITY;
    for (int i = 0; i <= GRID; i++) {
      double squares = Parabola.after(curve, from + i * step).squares();
      if (squares < least) {
        least = squares;
        best = from + i * step;
      }
    }
    return best;
  }

  private static boolean isClimbing(Curve curve, double knee) {
    return Parabola.after(curve, knee).slope() > 0;
  }

  /**
   * The sum of squares grows by the variance when the knee moves by its standard uncertainty.
   * Strokes that a low rate turns into a slow wave leave scatter whose neighbours are alike: it
   * averages out as so many fewer independent points would (first-order autoregression).
   */
  private static Knee at(Curve curve, double knee) {
    double apart = Math.max(curve.period(), 0.02);
    Parabola found = Parabola.after(curve, knee);
    double least = found.squares();
    double sides =
        Parabola.after(curve, knee - apart).squares()
            + Parabola.after(curve, knee + apart).squares();
    double curvature = Math.max(1e-12, (sides - 2 * least) / (apart * apart) / 2);
    double variance = least / Math.max(1, curve.size() - 3);
    double alike = Math.min(MOST_ALIKE, Math.max(0, found.lag1(curve, knee)));
    return new Knee(knee, Math.sqrt(variance / curvature * (1 + alike) / (1 - alike)));
  }

  /** a x + b x2 through the points after the knee, and the sum of squares of all points. */
  private record Parabola(double slope, double bend, double squares) {

    static Parabola after(Curve curve, double knee) {
      double x2 = 0;
      double x3 = 0;
      double x4 = 0;
      double xy = 0;
      double xxy = 0;
      double yy = 0;
      for (int i = 0; i < curve.size(); i++) {
        double x = Math.max(0, curve.time(i) - knee);
        double y = curve.level(i);
        x2 += x * x;
        x3 += x * x * x;
        x4 += x * x * x * x;
        xy += x * y;
        xxy += x * x * y;
        yy += y * y;
      }
      double determinant = x2 * x4 - x3 * x3;
      if (determinant <= 1e-12 * x2 * x4) {
        return new Parabola(x2 > 0 ? xy / x2 : 0, 0, x2 > 0 ? yy - xy * xy / x2 : yy);
      }
      double a = (xy * x4 - xxy * x3) / determinant;
      double b = (xxy * x2 - xy * x3) / determinant;
      return new Parabola(a, b, Math.max(0, yy - a * xy - b * xxy));
    }

    /** Lag-1 autocorrelation of what is left of a curve. */
    double lag1(Curve curve, double knee) {
      double products = 0;
      double before = 0;
      for (int i = 0; i < curve.size(); i++) {
        double x = Math.max(0, curve.time(i) - knee);
        double rest = curve.level(i) - slope * x - bend * x * x;
        products += before * rest;
        before = rest;
      }
      return squares > 0 ? products / squares : 0;
    }
  }
}
