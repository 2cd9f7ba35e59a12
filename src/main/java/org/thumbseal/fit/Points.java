package org.thumbseal.fit;

import java.util.Arrays;
import java.util.BitSet;

/** Pairs (x, y) of finite numbers that a curve is fitted to; never changes. */
public final class Points {
  private final double[] x;
  private final double[] y;

  private Points(double[] x, double[] y) {
    this.x = x;
    this.y = y;
  }

  /**
   * Keeps copies of both arrays.
   *
   * @throws IllegalArgumentException if the lengths differ or a number is not finite
   */
  public static Points of(double[] x, double[] y) {
    if (x.length != y.length) {
      throw new IllegalArgumentException(x.length + " abscissas for " + y.length + " ordinates");
    }
    if (!allFinite(x) || !allFinite(y)) {
      throw new IllegalArgumentException("points must be finite numbers");
    }
    return new Points(x.clone(), y.clone());
  }

  /** Number of points. */
  public int size() {
    return x.length;
  }

  /** Abscissa of a point, counted from 0. */
  public double x(int index) {
    return x[index];
  }

  /** Ordinate of a point, counted from 0. */
  public double y(int index) {
    return y[index];
  }

  /** The points from one index up to, not including, another. */
  public Points slice(int from, int to) {
    return new Points(Arrays.copyOfRange(x, from, to), Arrays.copyOfRange(y, from, to));
  }

  /** The points whose index is set. */
  Points only(BitSet indices) {
    return new Points(
        indices.stream().mapToDouble(i -> x[i]).toArray(),
        indices.stream().mapToDouble(i -> y[i]).toArray());
  }

  private static boolean allFinite(double[] values) {
    return Arrays.stream(values).allMatch(Double::isFinite);
  }
}
