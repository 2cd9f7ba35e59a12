package org.thumbseal.fit;

/**
 * What a pump draws from the jar, and how that depends on pressure and parameters; all in shares of
 * the jar's first content and of ambient.
 *
 * <p>The pump takes d = k (P2 - u) at its inlet pressure P2; a laminar restriction of resistance r
 * passes d = (P^2 - P2^2)/(2 r), viscous flow of a gas: conductance grows with the mean pressure
 * (Hagen-Poiseuille, from memory). Hence P2 = sqrt((r k)^2 + P^2 + 2 r k u) - r k, which is P where
 * r is 0.
 *
 * @param flow d, 1/s
 * @param byPressure its derivative by P
 * @param byRate by k
 * @param byUltimate by u
 * @param byResistance by r
 */
record PumpFlow(
    double flow, double byPressure, double byRate, double byUltimate, double byResistance) {

  static PumpFlow at(double pressure, double[] p) {
    double k = p[PumpDown.RATE];
    double u = p[PumpDown.ULTIMATE];
    double a = p[PumpDown.RESISTANCE] * k;
    double root = Math.sqrt(Math.max(1e-12, a * a + pressure * pressure + 2 * a * u));
    double excess = root - a - u;
    double byDrop = -k * excess / root;
    return new PumpFlow(
        k * excess,
        k * pressure / root,
        excess + byDrop * p[PumpDown.RESISTANCE],
        k * (a / root - 1),
        byDrop * k);
  }

  /** Derivative by a parameter, the pressure held. */
  double by(int parameter) {
    return switch (parameter) {
      case PumpDown.RATE -> byRate;
      case PumpDown.ULTIMATE -> byUltimate;
      case PumpDown.RESISTANCE -> byResistance;
      default -> 0;
    };
  }
}
