package org.thumbseal.simulate;

/**
 * Everything the sensor is put on.
 *
 * @param weather the air around it
 * @param jar the jar
 * @param pump the pump
 * @param circuit inlet, leak, filter and control
 * @param fault what was done to it; for tables, nothing else looks at it
 */
public record Plant(Weather weather, Jar jar, Pump pump, Circuit circuit, Fault fault) {
  private static final double LITRES_A_MINUTE = 1 / 60_000.0;

  /** A plant of which nothing is said to be wrong. */
  public Plant(Weather weather, Jar jar, Pump pump, Circuit circuit) {
    this(weather, jar, pump, circuit, Fault.NONE);
  }

  /** The same plant with another circuit. */
  public Plant with(Circuit other) {
    return new Plant(weather, jar, pump, other, fault);
  }

  /** The same plant with another pump. */
  public Plant with(Pump other) {
    return new Plant(weather, jar, other, circuit, fault);
  }

  /** The same plant with another jar. */
  public Plant with(Jar other) {
    return new Plant(weather, other, pump, circuit, fault);
  }

  /** The same plant, said to have a fault. */
  Plant with(Fault other) {
    return new Plant(weather, jar, pump, circuit, other);
  }

  /** The same plant on another day. */
  public Plant with(Weather other) {
    return new Plant(other, jar, pump, circuit, fault);
  }

  /** Ultimate pressure of the pump here, Pa. */
  public double ultimatePascals() {
    return pump.ultimateFraction() * weather.pascals();
  }

  /** Vacuum at which the pump alone draws nothing any more, Pa. */
  public double reachable() {
    return weather.pascals() - ultimatePascals();
  }

  /** What comes in through the leak while it is choked, L/min of ambient air. */
  public double leakLitresPerMinute() {
    return circuit.leakArea() / areaOfLeak(1);
  }

  /** What comes back through the resting pump while that is choked, L/min of ambient air. */
  public double restingLeakLitresPerMinute() {
    return pump.restingLeak() / areaOfLeak(1);
  }

  /** Effective area, m2, of a hole with a choked flow in L/min of ambient air. */
  double areaOfLeak(double litresPerMinute) {
    double moles = weather.pascals() * LITRES_A_MINUTE / (Air.R * weather.kelvin());
    return litresPerMinute * moles / Orifice.molesFromAmbient(weather, 0);
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
