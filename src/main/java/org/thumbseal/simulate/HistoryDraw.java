package org.thumbseal.simulate;

import java.util.List;
import org.thumbseal.quantity.StandardAtmosphere;
import org.thumbseal.wire.WireRecord.Identity;
import org.thumbseal.wire.WireRecord.Reference;

/** Draws a pump with its place and sensor, a fault, and two days. */
final class HistoryDraw {
  /** Altitude from which on no test is made without a barometer, m: its limits would be wrong. */
  private static final double BAROMETER_FROM_METRES = 100;

  private static final double ZERO_PASCALS = 300;
  private static final double ZERO_MOVES_PASCALS = 100;
  private static final double CLOCK_ERROR = 1e-4;
  private static final double JITTER_SECONDS = 5e-5;
  private static final long WRAP = 1L << 32;

  /** A thumb on an inlet lets in up to this share of what the pump draws. */
  private static final double THUMB_LEAK = 0.002;

  private final Draw pump;
  private final Draw electronics;
  private final long seed;
  private final Fault fault;
  private final double speedLost;
  private final double metres;
  private final Breadth breadth;

  HistoryDraw(FaultKind kind, long seed, Breadth breadth) {
    Draw wear = new Draw(seed, "history fault");
    this.pump = new Draw(seed, "history pump");
    this.electronics = new Draw(seed, "history electronics");
    this.seed = seed;
    this.fault = kind.drawn(wear);
    this.speedLost = wear.between(0.5, 1.5);
    this.breadth = breadth;
    this.metres = breadth.metres(pump);
  }

  PumpHistory history() {
    Plant plant = sound();
    Sensor sensor = sensor();
    return new PumpHistory(
        day(plant, sensor, Draw.another(seed)), day(withFault(plant), sensor, seed));
  }

  private Plant withFault(Plant sound) {
    Plant plant = fault.in(sound, speedLost);
    boolean leaky = fault.kind() == FaultKind.WORN_VALVES;
    return leaky ? plant.with(plant.pump().leakingAtRest(3e-7 * fault.severity())) : plant;
  }

  private Plant sound() {
    double litres = pump.betweenLog(0.5, 5);
    double least = Math.max(10, litres * 60 / 12);
    double most = Math.min(60, litres * 60);
    Pump tight =
        Pump.of(pump.betweenLog(least, most), pump.between(0.06, 0.14))
            .at(pump.oneOf(List.of(24.0, 29.0, 48.5)))
            .leakingAtRest(pump.between(0, 1e-8));
    Jar jar = Jar.cylinder(litres, pump.between(3, 20));
    Circuit closed = Circuit.tight(0).warmed(pump.between(0.7, 1));
    Plant plant = new Plant(standard(), jar, tight, closed);
    double open = plant.areaBalancedAt(pump.between(30, 500));
    return plant.with(plant.circuit().inlet(open));
  }

  private Sensor sensor() {
    double hertz = breadth.hertz(electronics);
    Identity identity =
        electronics.chance(0.2)
            ? new Identity("SIM-01", "1.0.0", Reference.ABSOLUTE, 0, 120_000, hertz)
            : new Identity("SIM-01", "1.0.0", Reference.GAUGE, -115_000, 15_000, hertz);
    Transducer transducer =
        breadth.transducer(electronics).shifted(electronics.between(-ZERO_PASCALS, ZERO_PASCALS));
    boolean barometer = electronics.chance(0.7) || metres > BAROMETER_FROM_METRES;
    return new Sensor(identity, transducer, Upsets.NONE, Ticks.PERFECT, barometer);
  }

  private Scenario day(Plant plant, Sensor sensor, long noise) {
    Draw day = new Draw(noise, "day");
    double thumb = day.between(0, THUMB_LEAK) * plant.pump().litresPerMinute();
    double leak = plant.circuit().leakArea() + plant.areaOfLeak(thumb);
    Plant today = plant.with(plant.circuit().leaking(leak)).with(weather(day));
    Transducer moved =
        sensor.transducer().shifted(day.between(-ZERO_MOVES_PASCALS, ZERO_MOVES_PASCALS));
    return new Scenario(
        today, sensor.with(moved).with(ticks(day)), line(day), script(today, day), noise);
  }

  /** A fifth of the tests ends with the pump switched off before the thumb is taken away. */
  private static Script script(Plant plant, Draw day) {
    Script open = Script.quiet(day.between(3, 5)).pumpOn(day.between(4, 8) + tau(plant));
    Script blocked = open.block(held(plant) * day.between(0.9, 1.2));
    return day.chance(0.2)
        ? blocked.pumpOff(day.between(20, 30)).release(3)
        : blocked.release(day.between(2, 4)).pumpOff(day.between(2, 4));
  }

  /** A technician waits until the needle rests. */
  private static double held(Plant plant) {
    boolean filtered = Double.isFinite(plant.circuit().filterConductance());
    return Math.min(120, Math.max(8, (filtered ? 12 : 6) * tau(plant)));
  }

  private static double tau(Plant plant) {
    return plant.jar().cubicMetres() / plant.pump().speed();
  }

  private static Line line(Draw day) {
    return new Line(day.oneOf(List.of(0.0, 0.001, 0.016, 0.1)), 0, 0, day.chance(0.5));
  }

  private static Ticks ticks(Draw day) {
    boolean wraps = day.chance(0.5);
    long counter = wraps ? WRAP - 1 - day.below(4_000) : day.below(1_000);
    long micros = wraps ? WRAP - 5_000_000 - day.below(15_000_000) : 1_200_345;
    return new Ticks(counter, micros, day.between(-CLOCK_ERROR, CLOCK_ERROR), JITTER_SECONDS);
  }

  private Weather standard() {
    return new Weather(Math.rint(StandardAtmosphere.pascalsAt(metres)), 20);
  }

  private Weather weather(Draw day) {
    double pascals = StandardAtmosphere.pascalsAt(metres) * day.between(0.985, 1.015);
    return new Weather(Math.rint(pascals), Math.rint(10 * day.between(17, 27)) / 10);
  }
}
