package org.thumbseal.pipeline;

import java.util.Optional;
import java.util.Random;
import org.thumbseal.measurement.Budgeted;
import org.thumbseal.measurement.Decay;
import org.thumbseal.simulate.Circuit;
import org.thumbseal.simulate.Jar;
import org.thumbseal.simulate.Line;
import org.thumbseal.simulate.Plant;
import org.thumbseal.simulate.Pump;
import org.thumbseal.simulate.Scenario;
import org.thumbseal.simulate.Script;
import org.thumbseal.simulate.Sensor;
import org.thumbseal.simulate.Ticks;
import org.thumbseal.simulate.Transducer;
import org.thumbseal.simulate.Upsets;
import org.thumbseal.simulate.Weather;
import org.thumbseal.wire.WireRecord.Identity;
import org.thumbseal.wire.WireRecord.Reference;

/**
 * A decay drawn from a seed. Everything that the budget holds for uncertain is drawn as the budget
 * states it: gain, jar volume, ambient pressure.
 */
final class DrawnDecay {
  private static final double OPEN_UNTIL = 7;
  private static final double TIGHT = 0.2;
  private static final double FEWEST_MILLILITRES = 50;
  private static final double MOST_MILLILITRES = 5_000;

  private final long seed;
  private final Random random;
  private final Weather weather;
  private final double litres;
  private final double tau;
  private final double truth;
  private final boolean pinched;
  private final Plant plant;
  private final Sensor sensor;
  private final double held;
  private final double seconds;

  DrawnDecay(long seed) {
    this.seed = seed;
    random = new Random(seed * 7_919 + 13);
    weather = new Weather(between(95_000, 103_000), between(18, 26));
    litres = between(0.5, 4);
    tau = between(2.5, 5);
    Plant tight = tight();
    boolean byPump = random.nextDouble() < 0.3;
    truth = leak(tight.pump());
    pinched = !byPump && random.nextDouble() < 0.4;
    plant = byPump ? byPump(tight) : tight.with(tight.circuit().leaking(area(tight)));
    sensor = sensor();
    held = tau * between(4, 7);
    seconds = between(10, 45);
  }

  private double between(double low, double high) {
    return low + (high - low) * random.nextDouble();
  }

  private double oneOf(double... of) {
    return of[random.nextInt(of.length)];
  }

  private Plant tight() {
    Pump pump = Pump.of(litres * 60 / tau, between(0.06, 0.14)).at(oneOf(24, 29, 48.5));
    return new Plant(weather, Jar.cylinder(litres, between(3, 25)), pump, Circuit.tight(2e-5));
  }

  /** At most a quarter of what the pump draws, or there would be no vacuum to decay. */
  private double leak(Pump pump) {
    double most = Math.min(MOST_MILLILITRES, 250 * pump.litresPerMinute());
    double drawn = FEWEST_MILLILITRES * Math.pow(most / FEWEST_MILLILITRES, random.nextDouble());
    return random.nextDouble() < TIGHT ? 0 : drawn;
  }

  private double area(Plant tight) {
    return truth / 1_000 / tight.with(tight.circuit().leaking(1)).leakLitresPerMinute();
  }

  private Plant byPump(Plant tight) {
    return tight.with(tight.pump().leakingAtRest(area(tight)));
  }

  private Sensor sensor() {
    double hertz = oneOf(20, 50, 100, 200);
    Identity identity = new Identity("SIM-01", "1.0.0", Reference.GAUGE, -115_000, 15_000, hertz);
    Transducer transducer =
        new Transducer(
            between(-300, 300), between(-0.025, 0.025), between(20, 120), oneOf(1, 10, 56, 112));
    Ticks ticks = new Ticks(0, 0, between(-1e-4, 1e-4), 5e-5);
    return new Sensor(identity, transducer, Upsets.NONE, ticks, false);
  }

  private Script script() {
    Script blocked = Script.quiet(3).pumpOn(OPEN_UNTIL - 3).block(held);
    return (pinched ? blocked.pinch(seconds) : blocked.pumpOff(seconds)).release(3);
  }

  /** What is known of it, with the errors that people make. */
  private GradingSettings settings() {
    double air = weather.pascals() / 1_000 + between(-0.5, 0.5);
    double jar = litres / (1 + between(-0.03, 0.03));
    return GradingSettings.DEFAULT
        .at(GivenPlace.of(Optional.of(air), Optional.empty()))
        .withPump(p -> p.withJarLitres(jar).withPinched(pinched));
  }

  /** Measures it. */
  Outcome outcome() {
    Scenario scenario = new Scenario(plant, sensor, Line.CLEAN, script(), seed);
    GradingSettings settings = settings();
    double off = OPEN_UNTIL + held;
    double line = new LineThrough(off + 15, off + seconds - 0.1, choked()).slope(scenario);
    return new Outcome(
        seed,
        truth,
        pinched,
        Decays.of(scenario, settings),
        line * 60_000 * litres / (weather.pascals() / 1_000) / gain(),
        known(settings));
  }

  private double choked() {
    return 0.4717 * weather.pascals();
  }

  /** What takes the errors of volume and air out of a leak rate again; that of the gain too. */
  private double known(GradingSettings settings) {
    double air = settings.place().ambientKilopascals().orElseThrow() / (weather.pascals() / 1_000);
    double volume = litres / settings.pump().jarLitres().orElseThrow();
    return air * volume / gain();
  }

  private double gain() {
    return 1 + sensor.transducer().gainError();
  }

  /**
   * What was found.
   *
   * @param seed it was drawn from
   * @param truth what leaked, mL/min
   * @param pinched whether the hose was, and not the pump switched off
   * @param decay what was measured
   * @param line what a straight line through the choked part from 15 s on would have said, mL/min,
   *     gain, volume and air known; not a number where there is no such part
   * @param known factor that takes the drawn errors of volume, air and gain out
   */
  record Outcome(
      long seed, double truth, boolean pinched, Optional<Decay> decay, double line, double known) {
    Optional<Budgeted> leak() {
      return decay.flatMap(Decay::leakRate);
    }

    double error() {
      return leak().orElseThrow().value() - truth;
    }

    double expanded() {
      return leak().orElseThrow().quantity().expandedUncertainty();
    }

    boolean isCovered() {
      return Math.abs(error()) <= expanded();
    }
  }
}
