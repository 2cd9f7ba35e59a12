package org.thumbseal.simulate;

import java.util.List;
import org.thumbseal.quantity.StandardAtmosphere;

/**
 * Draws the weather, the jar and the pump of a kind. Pressures in Pa, as shares of ambient. What is
 * not sound was sound first, drawn the same way, so that the same seed gives its sound twin.
 */
final class PlantDraw {
  private static final double RISE_SHARE = 65_000 / StandardAtmosphere.SEA_LEVEL_PASCALS;
  private static final double LEAST_WARMING = 0.7;

  private final Draw draw;
  private final Draw hose;
  private final Conditions conditions;
  private final double metres;
  private final Weather weather;

  /** Draws by a seed. */
  PlantDraw(SimulationKind kind, Conditions conditions, long seed) {
    this.draw = new Draw(seed, "plant");
    this.hose = new Draw(seed, "hose");
    this.conditions = conditions;
    boolean high = kind == SimulationKind.ALTITUDE;
    this.metres = conditions.altitude().orElse(high ? between(2000, 3000) : 0);
    this.weather = today(metres, draw);
  }

  Plant of(SimulationKind kind) {
    return switch (kind) {
      case SLOW -> slow(sound());
      case WORN_PUMP -> worn(sound());
      case LEAK -> leaking(sound(), between(66, 76));
      case PINCHED_HOSE -> leakingALittle(sound());
      case NO_VACUUM -> powerless(sound(), between(8, 15));
      case RESTRICTION -> restricted(sound());
      case CONTROL_NOT_AT_MAXIMUM -> controlled(sound());
      case REDUCED_VOLUME -> halfFull(sound());
      case BLOCKED_INLET -> narrow(sound(), between(12, 25));
      default -> sound();
    };
  }

  /** A plant that meets the default criteria with room to spare. */
  Plant sound() {
    double highest = between(0.88, 0.93);
    double litres = conditions.litres().orElse(draw.oneOf(List.of(1.0, 1.5, 2.0, 2.5, 3.0)));
    double speed = litresPerMinute(highest, between(6.8, 8.7), litres);
    Pump pump = Pump.of(speed, 1 - highest).at(draw.oneOf(List.of(24.0, 29.0, 48.5)));
    Jar jar = Jar.cylinder(litres, between(5, 20));
    Circuit closed = Circuit.tight(0).warmed(hose.between(LEAST_WARMING, 1));
    return open(new Plant(weather, jar, pump, closed), between(0.03, 0.5));
  }

  /** The weather of another day at the same place. */
  Weather otherDay(Draw day) {
    return today(metres, day);
  }

  /**
   * Speed of a pump by what it does, L/min.
   *
   * @param highest vacuum over ambient pressure
   * @param seconds isothermal time for the rise of the default criteria; cooling takes up to 10 %
   *     off it
   */
  private static double litresPerMinute(double highest, double seconds, double litres) {
    double share = RISE_SHARE / highest;
    double tau = seconds / -StrictMath.log(1 - Math.min(share, 0.97));
    return litres * 60 / tau;
  }

  private Plant slow(Plant sound) {
    double highest = 1 - sound.pump().ultimateFraction();
    double left = litresPerMinute(highest, between(12.8, 17), sound.jar().litres());
    double lost = 1 - left / sound.pump().litresPerMinute();
    return new Fault(FaultKind.LOST_SPEED, lost).in(sound, 0);
  }

  private Plant worn(Plant sound) {
    double highest = between(0.66, 0.75);
    double left = litresPerMinute(highest, between(14, 25), sound.jar().litres());
    double lost = Math.max(0, 1 - left / sound.pump().litresPerMinute());
    double severity = 1 - highest / (1 - sound.pump().ultimateFraction());
    Plant weak = new Fault(FaultKind.WORN_VALVES, severity).in(sound, lost / severity);
    return weak.with(weak.pump().leakingAtRest(between(0.2, 1.0) * 1e-7));
  }

  /** The same plant with the inlet that gives an open vacuum, kPa. */
  private static Plant open(Plant plant, double kilopascals) {
    double area = plant.areaBalancedAt(kilopascals * 1_000);
    return plant.with(plant.circuit().inlet(area));
  }

  private static Plant narrow(Plant sound, double kilopascals) {
    double severity = kilopascals * 1_000 / sound.reachable();
    return new Fault(FaultKind.BLOCKED_INLET, severity).in(sound, 0);
  }

  /** The same plant with a leak that leaves a vacuum, kPa at sea level. */
  private Plant leaking(Plant sound, double kilopascals) {
    double area = sound.areaBalancedAt(atAmbient(kilopascals));
    double flow = area / sound.areaOfLeak(1);
    return new Fault(FaultKind.LEAK, flow / sound.pump().litresPerMinute()).in(sound, 0);
  }

  private Plant powerless(Plant sound, double kilopascals) {
    double severity = 1 - atAmbient(kilopascals) / sound.reachable();
    return new Fault(FaultKind.NO_VACUUM, severity).in(sound, 0);
  }

  /** A leak of 20 to 500 mL/min of ambient air, choked. */
  private Plant leakingALittle(Plant sound) {
    double litresPerMinute = 0.02 * StrictMath.pow(25, between(0, 1));
    return new Fault(FaultKind.LEAK, litresPerMinute / sound.pump().litresPerMinute()).in(sound, 0);
  }

  /** A filter that takes half of the flow at ambient pressure, and far more when it is low. */
  private Plant restricted(Plant sound) {
    return new Fault(FaultKind.RESTRICTION, between(0.44, 0.64)).in(sound, 0);
  }

  private Plant controlled(Plant sound) {
    double severity = 1 - atAmbient(between(69.5, 75.5)) / sound.reachable();
    return new Fault(FaultKind.CONTROL_NOT_AT_MAXIMUM, severity).in(sound, 0);
  }

  private Plant halfFull(Plant sound) {
    return new Fault(FaultKind.REDUCED_VOLUME, between(0.4, 0.6)).in(sound, 0);
  }

  private double atAmbient(double kilopascals) {
    return kilopascals * 1_000 * weather.pascals() / StandardAtmosphere.SEA_LEVEL_PASCALS;
  }

  private static Weather today(double metres, Draw day) {
    double celsius = day.between(18, 26);
    double pressure = StandardAtmosphere.pascalsAt(metres) * day.between(0.99, 1.012);
    return new Weather(Math.rint(pressure), Math.rint(celsius * 10) / 10);
  }

  private double between(double low, double high) {
    return draw.between(low, high);
  }
}
