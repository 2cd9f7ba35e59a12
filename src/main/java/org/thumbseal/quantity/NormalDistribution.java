package org.thumbseal.quantity;

/** The standard normal distribution. */
public final class NormalDistribution {
  /** Beyond this the rest is below 1e-15. */
  private static final double FAR = 8;

  private NormalDistribution() {}

  /**
   * Phi(z), the share of values below z, to about 1e-15: the density times the series z + z3/3 +
   * z5/(3 5) + ... (Abramowitz and Stegun 26.2.11, from memory).
   */
  public static double cumulative(double z) {
    if (Math.abs(z) > FAR) {
      return z > 0 ? 1 : 0;
    }
    double sum = z;
    double term = z;
    for (int i = 3; Math.abs(term) > Math.ulp(sum); i += 2) {
      term *= z * z / i;
      sum += term;
    }
    return 0.5 + sum * StrictMath.exp(-z * z / 2) / Math.sqrt(2 * Math.PI);
  }

  /**
   * The z below which the given share of values lies, to about 1e-12 where the share is not within
   * 1e-9 of 0 or 1: by halving.
   *
   * @param share above 0 and below 1
   */
  public static double quantile(double share) {
    if (!(share > 0 && share < 1)) {
      throw new IllegalArgumentException("no share of a whole: " + share);
    }
    double low = -FAR;
    double high = FAR;
    while (high - low > 1e-13) {
      double middle = (low + high) / 2;
      if (cumulative(middle) < share) {
        low = middle;
      } else {
        high = middle;
      }
    }
    return (low + high) / 2;
  }
}
