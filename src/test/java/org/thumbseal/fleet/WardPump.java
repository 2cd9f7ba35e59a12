package org.thumbseal.fleet;

import java.util.NavigableMap;
import java.util.Optional;
import java.util.Random;
import java.util.TreeMap;
import java.util.stream.IntStream;
import org.thumbseal.simulate.Circuit;
import org.thumbseal.simulate.Jar;
import org.thumbseal.simulate.Plant;
import org.thumbseal.simulate.Pump;
import org.thumbseal.simulate.Weather;

/**
 * A pump that ages: what the sensor is put on in a month, counted from 0, and what repair does to
 * it.
 */
final class WardPump {
  private static final double RISE = 65_000;
  private static final double AIR = 101_325;

  private final Fate fate;
  private final Plant sound;
  private final double onset;
  private final double rate;
  private final double season;
  private final NavigableMap<Double, State> states = new TreeMap<>();

  /**
   * What was made new, and when.
   *
   * @param overhauled month of the last overhaul
   * @param filter month of its filter
   * @param leakMended whether its leak was mended
   */
  private record State(double overhauled, double filter, boolean leakMended) {}

  /**
   * Draws it.
   *
   * @param litres of its jar, L
   */
  WardPump(Fate fate, double litres, Random random) {
    this.fate = fate;
    boolean near = fate == Fate.NEAR_LIMIT;
    double highest = near ? 0.915 : 0.9 + 0.03 * random.nextDouble();
    double seconds = near ? 8.4 + 0.7 * random.nextDouble() : 4.5 + 3 * random.nextDouble();
    sound = sound(litres, seconds, highest);
    onset = 6 + 24 * random.nextDouble();
    rate = 0.6 + 0.8 * random.nextDouble();
    season = near ? 0.01 : 0.01 + 0.02 * random.nextDouble();
    states.put(-1.0, new State(0, -8 * random.nextDouble(), false));
  }

  /** Isothermal time for the rise; cooling takes up to 10 % off it. */
  private static Plant sound(double litres, double seconds, double highest) {
    double tau = seconds / -Math.log(1 - RISE / AIR / highest);
    Pump pump = Pump.of(litres * 60 / tau, 1 - highest).at(24);
    Plant closed = new Plant(new Weather(AIR, 24), Jar.cylinder(litres, 10), pump, tight());
    return closed.with(closed.circuit().inlet(closed.areaBalancedAt(200)));
  }

  private static Circuit tight() {
    return Circuit.tight(0).warmed(0.9);
  }

  Fate fate() {
    return fate;
  }

  /** Speed when it was sound, L/min. */
  double litresPerMinute() {
    return sound.pump().litresPerMinute();
  }

  /** Volume of the jar that stands on it. */
  double litres(double month) {
    return fate == Fate.OTHER_JAR && month > onset ? 1.25 * nominal() : nominal();
  }

  private double nominal() {
    return sound.jar().nominalLitres();
  }

  /** As it stands in a month, in the weather of the day, with the voltage and thumb of the day. */
  Plant plant(double month, Weather weather, Random day) {
    State state = state(month);
    double swing = season * Math.sin(2 * Math.PI * month / 12) + 0.02 * day.nextGaussian();
    Pump pump = sound.pump().slowed(1 - (1 - lost(month, state)) * (1 - swing));
    pump = pump.downTo(pump.ultimateFraction() + 0.12 * lost(month, state));
    double leaking = leak(month, state) + 0.002 * day.nextDouble();
    Circuit circuit = sound.circuit().leaking(area(leaking * litresPerMinute()));
    circuit = filtered(pump, circuit, clogged(month, state)).relievedAt(relief(month, state));
    return new Plant(weather, Jar.cylinder(litres(month), 10), pump, circuit);
  }

  /** The clogged filter and the pump pass the same with so much less before the pump. */
  private Circuit filtered(Pump pump, Circuit circuit, double severity) {
    if (severity <= 0) {
      return circuit;
    }
    double range = AIR * (1 - pump.ultimateFraction());
    double behind = AIR - severity * range;
    double passed = (1 - severity) * range;
    return circuit.filtered(2 * pump.speed() * passed / (AIR * AIR - behind * behind));
  }

  private double area(double litresPerMinute) {
    double one = sound.with(sound.circuit().leaking(1e-6)).leakLitresPerMinute();
    return litresPerMinute / one * 1e-6;
  }

  private double lost(double month, State state) {
    double age = month - state.overhauled();
    return switch (fate) {
      case SLOW_WEAR -> Math.min(0.9, 0.010 * rate * age);
      case FAST_WEAR -> Math.min(0.9, 0.033 * rate * age);
      default -> 0;
    };
  }

  /** Its choked flow over the speed of the pump. */
  private double leak(double month, State state) {
    if (state.leakMended() || month <= onset) {
      return 0;
    }
    return switch (fate) {
      case GROWING_LEAK -> 0.015 * rate * (month - onset);
      case SUDDEN_LEAK -> 0.14 * rate;
      default -> 0;
    };
  }

  private double clogged(double month, State state) {
    return fate == Fate.CLOGGING ? Math.min(0.8, 0.03 * rate * (month - state.filter())) : 0;
  }

  private double relief(double month, State state) {
    return fate == Fate.DRIFTING_CONTROL
        ? 93_000 - 700 * rate * (month - state.overhauled())
        : Double.POSITIVE_INFINITY;
  }

  /** Whether its filter is replaced at the visit of a month, before it fails. */
  boolean filterIsTired(double month) {
    return fate == Fate.CLOGGING && month - state(month).filter() >= 9;
  }

  /** A filter is put in. */
  void newFilter(double month) {
    State old = state(month);
    states.put(month, new State(old.overhauled(), month, old.leakMended()));
  }

  /** Gasket and joints are made good. */
  void newGasket(double month) {
    State old = state(month);
    states.put(month, new State(old.overhauled(), old.filter(), old.leakMended() || month > onset));
  }

  /** The workshop makes good whatever was worn. */
  void overhauled(double month) {
    states.put(month, new State(month, month, state(month).leakMended() || month > onset));
  }

  private State state(double month) {
    return states.floorEntry(month).getValue();
  }

  /** What a technician finds when it has failed; empty where the workshop is needed. */
  Optional<String> culprit() {
    return switch (fate) {
      case GROWING_LEAK, SUDDEN_LEAK -> Optional.of("gasket");
      case CLOGGING -> Optional.of("filter");
      default -> Optional.empty();
    };
  }

  /** Whether it fails within so many months after one, if nobody does anything any more. */
  boolean failsUnattended(double month, int months) {
    State now = state(month);
    return IntStream.rangeClosed(0, months).anyMatch(later -> fails(month + later, now));
  }

  /**
   * By the model of a few lines: the vacuum ends at what the pump reaches less pa L / S, and goes
   * there with V / S. A filter takes more than its share once the pressure is low: it fails earlier
   * than this says.
   */
  private boolean fails(double month, State state) {
    double lost = lost(month, state);
    double left = (1 - lost) * (1 - clogged(month, state));
    double end = sound.reachable() - AIR * (0.12 * lost + leak(month, state) / left);
    end = Math.min(end, relief(month, state));
    double tau = litres(month) * 60 / (litresPerMinute() * left);
    return end < 80_000 || 0.95 * tau * Math.log(end / (end - RISE)) > 10;
  }
}
