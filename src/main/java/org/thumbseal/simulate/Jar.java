package org.thumbseal.simulate;

/**
 * The collection jar with its tubes, as one lump of gas behind a wall at ambient temperature.
 *
 * @param cubicMetres volume of the gas, m3, above 0
 * @param wallConductance heat flow from wall to gas, W/K: 0 is adiabatic, infinity isothermal
 * @param nominalLitres what is printed on the jar, L; more than its gas when liquid stands in it
 */
public record Jar(double cubicMetres, double wallConductance, double nominalLitres) {
  /**
   * Height over diameter of the cylinder. Slim jars of 1 to 4 L are nearer to 2 than to 1 (common
   * practice, no published source).
   */
  private static final double SLENDERNESS = 2.25;

  private static final double LITRES_IN_CUBIC_METRE = 1_000;

  /** Refuses an empty jar and a negative conductance. */
  public Jar {
    Demand.that(cubicMetres > 0, "jar volume must be above 0");
    Demand.notNegative(wallConductance, "wall conductance");
    Demand.that(nominalLitres > 0, "nominal jar volume must be above 0");
  }

  /**
   * A closed cylinder that is {@value #SLENDERNESS} times as high as wide.
   *
   * @param litres its volume, L
   * @param transfer heat transfer from wall to gas, W/(m2 K); 5 to 20 for still air, infinity for
   *     an isothermal jar
   */
  public static Jar cylinder(double litres, double transfer) {
    double volume = litres / LITRES_IN_CUBIC_METRE;
    return new Jar(volume, transfer * surface(volume), litres);
  }

  /** The same jar in which only a part, 0 to 1, is left to the gas. */
  public Jar leftEmpty(double part) {
    return new Jar(cubicMetres * part, wallConductance * part, nominalLitres);
  }

  /** The volume of the gas in litres. */
  public double litres() {
    return cubicMetres * LITRES_IN_CUBIC_METRE;
  }

  private static double surface(double volume) {
    double diameter = StrictMath.cbrt(4 * volume / (Math.PI * SLENDERNESS));
    return Math.PI * diameter * diameter * (0.5 + SLENDERNESS);
  }
}
