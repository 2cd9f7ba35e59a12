package org.thumbseal.simulate;

/**
 * Everything the sensor is put on.
 *
 * @param weather the air around it
 * @param jar the jar
 * @param pump the pump
 * @param circuit inlet, leak, filter and control
 */
public record Plant(Weather weather, Jar jar, Pump pump, Circuit circuit) {

  /** The same plant with another circuit. */
  public Plant with(Circuit other) {
    return new Plant(weather, jar, pump, other);
  }

  /** The same plant with another pump. */
  public Plant with(Pump other) {
    return new Plant(weather, jar, other, circuit);
  }

  /** The same plant with another jar. */
  public Plant with(Jar other) {
    return new Plant(weather, other, pump, circuit);
  }

  /**
   * Effective area of a hole, m2, whose inflow the running pump just balances at a vacuum.
   *
   * @param vacuum below ambient, Pa, above 0 and below what the pump reaches
   */
  public double areaBalancedAt(double vacuum) {
    double pressure = weather.pascals() - vacuum;
    Demand.that(vacuum > 0, "vacuum must be above 0 Pa");
    GasState gas = GasState.atRest(this, pressure);
    double drawn = new Balance(this, Setting.RUNNING_BLOCKED).molesOut(gas);
    Demand.that(drawn > 0, "the pump does not reach a vacuum of " + vacuum + " Pa");
    return drawn / Orifice.molesFromAmbient(weather, pressure);
  }
}
