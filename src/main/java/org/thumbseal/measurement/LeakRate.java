package org.thumbseal.measurement;

/**
 * From the fall of a vacuum to the air that leaks in: Q = V dp/dt, as a volume at the pressure of
 * the air around.
 */
final class LeakRate {
  /** Pressure below which a leak is choked, as a share of ambient: (2/2.4)^3.5, air, gamma 1.4. */
  static final double CRITICAL_RATIO = StrictMath.pow(2 / 2.4, 3.5);

  private static final double MILLILITRES = 1_000;
  private static final double SECONDS = 60;

  private LeakRate() {}

  /**
   * Air of ambient pressure and temperature, mL/min.
   *
   * @param rate fall of the vacuum at constant temperature, kPa/s
   * @param litres volume of the jar, L
   * @param ambient kPa
   */
  static double millilitresPerMinute(double rate, double litres, double ambient) {
    return rate * litres / ambient * MILLILITRES * SECONDS;
  }

  /** The vacuum above which the leak is choked, kPa. */
  static double chokedAbove(double ambient) {
    return ambient * (1 - CRITICAL_RATIO);
  }
}
