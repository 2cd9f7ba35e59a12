package org.thumbseal.simulate;

/** Air as an ideal diatomic gas. */
final class Air {
  /** Molar gas constant, J/(mol K), exact (SI 2019). */
  static final double R = 8.31446261815324;

  /** Ratio of specific heats of a diatomic gas. */
  static final double GAMMA = 1.4;

  /** Molar heat capacity at constant volume, J/(mol K). */
  static final double CV = R / (GAMMA - 1);

  /** Molar heat capacity at constant pressure, J/(mol K). */
  static final double CP = CV * GAMMA;

  /** Molar mass, kg/mol (US Standard Atmosphere 1976). */
  static final double MOLAR_MASS = 0.0289644;

  private Air() {}
}
