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
}
