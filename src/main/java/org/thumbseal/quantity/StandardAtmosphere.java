package org.thumbseal.quantity;

/**
 * Pressure of the standard atmosphere up to 11 000 m.
 *
 * <p>Constants of ISO 2533:1975 with the US Standard Atmosphere 1976 gas constant; the ISO one
 * changes the pressure by 0.02 Pa at 5000 m.
 */
public final class StandardAtmosphere {
  /** Pressure at sea level, Pa. */
  public static final double SEA_LEVEL_PASCALS = 101_325.0;

  private static final double SEA_LEVEL_KELVIN = 288.15;
  private static final double LAPSE_KELVIN_PER_METRE = 0.0065;
  private static final double GRAVITY = 9.80665;
  private static final double GAS_CONSTANT_OF_AIR = 8314.32 / 28.9644;
  private static final double EXPONENT = GRAVITY / (GAS_CONSTANT_OF_AIR * LAPSE_KELVIN_PER_METRE);
  private static final double LOWEST_METRES = -500;
  private static final double HIGHEST_METRES = 11_000;

  private StandardAtmosphere() {}

  /**
   * Pressure in pascals at a geopotential height.
   *
   * @param metres height above sea level, -500 to 11 000 m
   * @throws IllegalArgumentException outside that range, or for a number that is not finite
   */
  public static double pascalsAt(double metres) {
    if (!(metres >= LOWEST_METRES && metres <= HIGHEST_METRES)) {
      throw new IllegalArgumentException(
          "altitude must be between -500 m and 11000 m, not " + metres);
    }
    return SEA_LEVEL_PASCALS
        * StrictMath.pow(1 - LAPSE_KELVIN_PER_METRE * metres / SEA_LEVEL_KELVIN, EXPONENT);
  }
}
