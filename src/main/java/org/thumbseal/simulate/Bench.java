package org.thumbseal.simulate;

import java.util.List;
import org.thumbseal.simulate.Act.Connect;
import org.thumbseal.simulate.Act.PinchHose;
import org.thumbseal.simulate.Act.SetInlet;
import org.thumbseal.simulate.Act.SwitchPump;

/**
 * Pump and jar in time: plays the acts of a script and integrates the gas between them by classic
 * fourth-order Runge-Kutta steps of at most 1 ms.
 */
final class Bench {
  static final double SPIN_SECONDS = 0.3;

  private static final double LONGEST_STEP = 1e-3;
  private static final double STILL_PASCALS_A_SECOND = 1e-4;

  private final List<Step> steps;
  private int next;
  private double now;

  private Plant plant;
  private GasState gas;
  private double opening = 1;
  private boolean on;
  private double speed;
  private boolean pinched;
  private double strokes;
  private Balance balance;

  Bench(Plant plant, Script script) {
    this.plant = plant;
    this.gas = GasState.atRest(plant, plant.weather().pascals());
    this.balance = new Balance(plant, new Setting(0, 1));
    this.steps = script.steps().stream().filter(s -> concerns(s.act())).toList();
    this.now = steps.isEmpty() ? 0 : Math.min(0, steps.get(0).seconds());
  }

  /** Goes on to a time, s; acts at that very time are done. */
  void advance(double seconds) {
    while (next < steps.size() && steps.get(next).seconds() <= seconds) {
      Step step = steps.get(next++);
      integrate(step.seconds());
      play(step.act());
    }
    integrate(seconds);
  }

  Plant plant() {
    return plant;
  }

  /** Absolute pressure in the jar, Pa, without stroke ripple. */
  double pascals() {
    return gas.pascals();
  }

  /** Below ambient, Pa, without stroke ripple. */
  double vacuum() {
    return plant.weather().pascals() - gas.pascals();
  }

  /** Temperature of the gas, K. */
  double kelvin() {
    return gas.kelvin(plant.jar());
  }

  /** What the strokes add to the pressure at this moment, Pa, zero in the mean. */
  double ripple() {
    return speed == 0 || pinched ? 0 : 0.5 * strokeSwing() * Ripple.wave(strokes);
  }

  /** Peak to peak of the stroke ripple at this moment, Pa. */
  double strokeSwing() {
    double swing = plant.pump().strokeVolume() * speed / plant.jar().cubicMetres() * pascals();
    return swing * Ripple.passed(plant.pump().strokeHertz(), balance.openRate());
  }

  /** Whether an act changes pump or inlet. */
  static boolean concerns(Act act) {
    return act instanceof SwitchPump
        || act instanceof SetInlet
        || act instanceof PinchHose
        || act instanceof Connect;
  }

  private void play(Act act) {
    if (act instanceof SwitchPump pump) {
      on = pump.on();
    } else if (act instanceof SetInlet inlet) {
      opening = inlet.opening();
    } else if (act instanceof PinchHose) {
      pinched = true;
    } else if (act instanceof Connect other) {
      connect(other.plant());
    }
    rebalance();
  }

  private void connect(Plant other) {
    plant = other;
    gas = GasState.atRest(other, other.weather().pascals());
    opening = 1;
    on = false;
    speed = 0;
    pinched = false;
  }

  private void integrate(double until) {
    while (now < until) {
      double left = until - now;
      double length = speed == motorTarget() ? left : Math.min(left, LONGEST_STEP);
      flow(length);
      spin(length);
      now = length < left ? now + length : until;
    }
  }

  private double motorTarget() {
    return on ? 1 : 0;
  }

  private void spin(double seconds) {
    strokes += seconds * speed * plant.pump().strokeHertz();
    strokes -= Math.floor(strokes);
    if (speed != motorTarget()) {
      double change = seconds / SPIN_SECONDS;
      speed = on ? Math.min(1, speed + change) : Math.max(0, speed - change);
      rebalance();
    }
  }

  private void rebalance() {
    balance = new Balance(plant, new Setting(speed, opening, pinched));
  }

  private void flow(double seconds) {
    double longest = Math.min(LONGEST_STEP, 1 / balance.stiffness());
    long count = (long) Math.ceil(seconds / longest);
    for (long i = 0; i < count; i++) {
      GasState rate = balance.rate(gas);
      if (still(rate)) {
        return;
      }
      gas = RungeKutta.step(balance, gas, rate, seconds / count);
    }
  }

  /** Whether the gas has come to rest for good: neither its pressure nor its amount changes. */
  private boolean still(GasState rate) {
    double amountAsPressure = rate.moles() / gas.moles() * gas.pascals();
    return Math.abs(rate.pascals()) < STILL_PASCALS_A_SECOND
        && Math.abs(amountAsPressure) < STILL_PASCALS_A_SECOND;
  }
}
