package org.thumbseal.trend;

/**
 * Student's distribution by its closed form for whole degrees of freedom (Abramowitz and Stegun,
 * Handbook of Mathematical Functions, 26.7.3 and 26.7.4).
 *
 * @param freedom degrees of freedom, 1 or more
 */
record StudentDistribution(int freedom) {
  /** Beyond this no table goes, and no pump. */
  private static final double FARTHEST = 1e6;

  StudentDistribution {
    if (freedom < 1) {
      throw new IllegalArgumentException("degrees of freedom: " + freedom);
    }
  }

  /** Probability of a value within so much of 0, on either side. */
  double within(double t) {
    double angle = StrictMath.atan(Math.abs(t) / Math.sqrt(freedom));
    double cosine = StrictMath.cos(angle);
    double sum = 0;
    double term = freedom % 2 == 0 ? 1 : cosine;
    for (int k = freedom % 2 == 0 ? 2 : 3; k <= freedom; k += 2) {
      sum += term;
      term *= cosine * cosine * (k - 1) / k;
    }
    double sine = StrictMath.sin(angle) * sum;
    return freedom % 2 == 0 ? sine : 2 / Math.PI * (angle + sine);
  }

  /** What a value keeps within, on either side, with a probability. */
  double quantile(double probability) {
    double low = 0;
    double high = FARTHEST;
    while (high - low > 1e-9 * (1 + low)) {
      double middle = (low + high) / 2;
      if (within(middle) < probability) {
        low = middle;
      } else {
        high = middle;
      }
    }
    return high;
  }
}
