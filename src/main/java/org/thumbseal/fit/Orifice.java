package org.thumbseal.fit;

/**
 * Flow of air from ambient through a small hole, as a share of its choked flow: constant below the
 * critical pressure ratio (2/2.4)^3.5 = 0.528, less above it, nothing at ambient (isentropic nozzle
 * flow with a ratio of specific heats of 1.4).
 */
final class Orifice {
  private static final double GAMMA = 1.4;
  private static final double CRITICAL = StrictMath.pow(2 / (GAMMA + 1), GAMMA / (GAMMA - 1));
  private static final double EXPONENT = 1 / GAMMA;
  private static final double CHOKED = raw(CRITICAL);

  /** Nearer to ambient the derivative grows without limit. */
  private static final double NEAREST = 1 - 1e-4;

  private Orifice() {}

  /** Share of the choked flow at a pressure inside, as a share of the ambient pressure outside. */
  static double flow(double pressure) {
    return pressure <= CRITICAL ? 1 : raw(Math.min(pressure, NEAREST)) / CHOKED;
  }

  /** Derivative of {@link #flow}. */
  static double derivative(double pressure) {
    if (pressure <= CRITICAL || pressure >= NEAREST) {
      return 0;
    }
    double power = StrictMath.pow(pressure, 1 - EXPONENT);
    double first = EXPONENT / pressure;
    double second = -0.5 * (1 - EXPONENT) * power / pressure / (1 - power);
    return flow(pressure) * (first + second);
  }

  private static double raw(double pressure) {
    return StrictMath.pow(pressure, EXPONENT)
        * StrictMath.sqrt(1 - StrictMath.pow(pressure, 1 - EXPONENT));
  }
}
