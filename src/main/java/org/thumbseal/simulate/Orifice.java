package org.thumbseal.simulate;

/**
 * Isentropic flow of air through a hole, choked below 0.528 of the upstream pressure (de Saint
 * Venant and Wantzel).
 */
final class Orifice {
  /** (2/(gamma+1))^(gamma/(gamma-1)) for gamma = 1.4. */
  static final double CRITICAL_RATIO = StrictMath.pow(2 / (Air.GAMMA + 1), 3.5);

  /**
   * Above this ratio the flow is taken as laminar, linear in the difference: the square root has an
   * infinite slope at zero difference, which no small hole has and no fixed step can follow.
   */
  static final double LAMINAR_RATIO = 0.9995;

  private static final double FLOW_AT_LAMINAR_RATIO = isentropic(LAMINAR_RATIO);
  private static final double FLOW_AT_CRITICAL_RATIO = isentropic(CRITICAL_RATIO);

  private Orifice() {}

  /** Flow per effective area from ambient into a pressure not above it, mol/(s m2). */
  static double molesFromAmbient(Weather weather, double pascals) {
    return moles(weather.pascals(), weather.kelvin(), pascals);
  }

  /** Flow per effective area between two absolute pressures, mol/(s m2). */
  static double moles(double upstream, double upstreamKelvin, double downstream) {
    double root = Math.sqrt(Air.R * upstreamKelvin * Air.MOLAR_MASS);
    return upstream / root * reduced(downstream / upstream);
  }

  /** Steepest fall of the ambient inflow per effective area with the pressure, mol/(s m2 Pa). */
  static double steepest(Weather weather) {
    double difference = (1 - LAMINAR_RATIO) * weather.pascals();
    return molesFromAmbient(weather, LAMINAR_RATIO * weather.pascals()) / difference;
  }

  private static double reduced(double ratio) {
    if (ratio > LAMINAR_RATIO) {
      return FLOW_AT_LAMINAR_RATIO * (1 - ratio) / (1 - LAMINAR_RATIO);
    }
    return ratio > CRITICAL_RATIO ? isentropic(ratio) : FLOW_AT_CRITICAL_RATIO;
  }

  private static double isentropic(double ratio) {
    double x = StrictMath.pow(ratio, 2.0 / 7);
    double x5 = x * x * x * x * x;
    return Math.sqrt(2 * Air.GAMMA / (Air.GAMMA - 1) * (x5 - x5 * x));
  }
}
