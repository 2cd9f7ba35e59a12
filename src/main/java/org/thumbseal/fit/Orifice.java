package org.thumbseal.fit;

/**
 * Flow of air from ambient through a small hole, as a share of its choked flow: constant below the
 * critical pressure ratio (2/2.4)^3.5 = 0.528, less above it, nothing at ambient (isentropic nozzle
 * flow with a ratio of specific heats of 1.4).
 *
 * @param flow share of the choked flow
 * @param derivative of it by the pressure
 */
record Orifice(double flow, double derivative) {
  private static final double GAMMA = 1.4;
  private static final double CRITICAL = StrictMath.pow(2 / (GAMMA + 1), GAMMA / (GAMMA - 1));
  private static final double EXPONENT = 1 / GAMMA;
  private static final double CHOKED = raw(CRITICAL, power(CRITICAL));

  /** Nearer to ambient the derivative grows without limit. */
  private static final double NEAREST = 1 - 1e-4;

  private static final Orifice OPEN = new Orifice(1, 0);

  /** Flow at a pressure inside, as a share of the ambient pressure outside. */
  static Orifice at(double pressure) {
    if (pressure <= CRITICAL) {
      return OPEN;
    }
    double power = power(Math.min(pressure, NEAREST));
    double flow = raw(Math.min(pressure, NEAREST), power) / CHOKED;
    if (pressure >= NEAREST) {
      return new Orifice(flow, 0);
    }
    double first = EXPONENT / pressure;
    double second = -0.5 * (1 - EXPONENT) * power / pressure / (1 - power);
    return new Orifice(flow, flow * (first + second));
  }

  private static double power(double pressure) {
    return StrictMath.pow(pressure, 1 - EXPONENT);
  }

  /** Powers are what takes the time of a fit: this one is made once. */
  private static double raw(double pressure, double power) {
    return StrictMath.pow(pressure, EXPONENT) * StrictMath.sqrt(1 - power);
  }
}
