package org.thumbseal.fit;

/**
 * y = c0 + c1 (x - centre) + c2 (x - centre)2 + ..., so that c0 is the level and c1 the slope at
 * the centre.
 */
record Polynomial(int degree, double centre) implements CurveModel {
  static final int HIGHEST_DEGREE = 3;

  Polynomial {
    if (degree < 0 || degree > HIGHEST_DEGREE || !Double.isFinite(centre)) {
      throw new IllegalArgumentException("degree " + degree + " about " + centre);
    }
  }

  @Override
  public int parameterCount() {
    return degree + 1;
  }

  @Override
  public double value(double[] c, double x) {
    double sum = 0;
    for (int power = degree; power >= 0; power--) {
      sum = sum * (x - centre) + c[power];
    }
    return sum;
  }

  @Override
  public void gradient(double[] c, double x, double[] out) {
    out[0] = 1;
    for (int power = 1; power <= degree; power++) {
      out[power] = out[power - 1] * (x - centre);
    }
  }
}
