package org.thumbseal.simulate;

import java.util.List;
import org.thumbseal.quantity.StandardAtmosphere;

/** Draws the weather, the jar and the pump of a kind. Pressures in Pa, as shares of ambient. */
final class PlantDraw {
  private static final double RISE_SHARE = 65_000 / StandardAtmosphere.SEA_LEVEL_PASCALS;

  private final Draw draw;
  private final Conditions conditions;
  private final Weather weather;

  PlantDraw(SimulationKind kind, Conditions conditions, Draw draw) {
    this.draw = draw;
    this.conditions = conditions;
    this.weather = weather(kind == SimulationKind.ALTITUDE);
  }

  Plant of(SimulationKind kind) {
    return switch (kind) {
      case SLOW -> pump(between(0.87, 0.92), between(12.8, 17));
      case WORN_PUMP -> worn();
      case LEAK -> leaking(sound(), between(66, 76));
      case NO_VACUUM -> leaking(sound(), between(8, 15));
      case RESTRICTION -> restricted(sound());
      case CONTROL_NOT_AT_MAXIMUM -> controlled(sound());
      case REDUCED_VOLUME -> halfFull(sound());
      case BLOCKED_INLET -> open(sound(), between(12, 25));
      default -> sound();
    };
  }

  /** A plant that meets the default criteria with room to spare. */
  Plant sound() {
    return pump(between(0.88, 0.93), between(6.8, 8.7));
  }

  private Plant worn() {
    Plant weak = pump(between(0.66, 0.75), between(14, 25));
    return weak.with(weak.pump().leakingAtRest(between(0.2, 1.0) * 1e-7));
  }

  /**
   * A plant by what it does.
   *
   * @param highest vacuum over ambient pressure
   * @param seconds isothermal time for the rise of the default criteria; cooling takes up to 10 %
   *     off it
   */
  private Plant pump(double highest, double seconds) {
    double litres = conditions.litres().orElse(draw.oneOf(List.of(1.0, 1.5, 2.0, 2.5, 3.0)));
    double share = RISE_SHARE / highest;
    double tau = seconds / -StrictMath.log(1 - Math.min(share, 0.97));
    Pump pump = Pump.of(litres * 60 / tau, 1 - highest).at(draw.oneOf(List.of(24.0, 29.0, 48.5)));
    Jar jar = Jar.cylinder(litres, between(5, 20));
    Plant closed = new Plant(weather, jar, pump, Circuit.tight(0));
    return open(closed, between(0.03, 0.5));
  }

  /** The same plant with the inlet that gives an open vacuum, kPa. */
  private static Plant open(Plant plant, double kilopascals) {
    double area = plant.areaBalancedAt(kilopascals * 1_000);
    return plant.with(plant.circuit().inlet(area));
  }

  /** The same plant with a leak that leaves a vacuum, kPa at sea level. */
  private Plant leaking(Plant plant, double kilopascals) {
    double area = plant.areaBalancedAt(atAmbient(kilopascals));
    return plant.with(plant.circuit().leaking(area));
  }

  /** A filter that takes half of the flow at ambient pressure, and far more when it is low. */
  private Plant restricted(Plant plant) {
    double conductance = between(0.8, 1.6) * plant.pump().speed() / weather.pascals();
    return plant.with(plant.circuit().filtered(conductance));
  }

  private Plant controlled(Plant plant) {
    return plant.with(plant.circuit().relievedAt(atAmbient(between(69.5, 75.5))));
  }

  private Plant halfFull(Plant plant) {
    return plant.with(plant.jar().leftEmpty(between(0.4, 0.6)));
  }

  private double atAmbient(double kilopascals) {
    return kilopascals * 1_000 * weather.pascals() / StandardAtmosphere.SEA_LEVEL_PASCALS;
  }

  private Weather weather(boolean high) {
    double metres = conditions.altitude().orElse(high ? between(2000, 3000) : 0);
    double celsius = between(18, 26);
    double today = StandardAtmosphere.pascalsAt(metres) * between(0.99, 1.012);
    return new Weather(Math.rint(today), Math.rint(celsius * 10) / 10);
  }

  private double between(double low, double high) {
    return draw.between(low, high);
  }
}
