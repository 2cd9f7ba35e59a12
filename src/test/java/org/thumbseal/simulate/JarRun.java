package org.thumbseal.simulate;

import java.util.function.Predicate;

/** Integrates the gas of a plant by itself, for checks against published numbers. */
final class JarRun {
  static final double KPA = 1_000;
  private static final double STEP = 1e-3;

  private final Plant plant;
  private GasState gas;
  private double coldest;

  JarRun(Plant plant, double pascals) {
    this.plant = plant;
    this.gas = GasState.atRest(plant, pascals);
    this.coldest = gas.kelvin(plant.jar());
  }

  static JarRun fromAmbient(Plant plant) {
    return new JarRun(plant, plant.weather().pascals());
  }

  JarRun run(Setting setting, double seconds) {
    Balance balance = new Balance(plant, setting);
    for (long i = Math.round(seconds / STEP); i > 0; i--) {
      step(balance);
    }
    return this;
  }

  /** Seconds of pumping with the inlet blocked until something is so. */
  double secondsUntil(Predicate<JarRun> reached) {
    Balance balance = new Balance(plant, Setting.RUNNING_BLOCKED);
    int steps = 0;
    while (!reached.test(this)) {
      step(balance);
      steps++;
    }
    return steps * STEP;
  }

  double kilopascals() {
    return gas.pascals() / KPA;
  }

  double vacuum() {
    return (plant.weather().pascals() - gas.pascals()) / KPA;
  }

  double celsius() {
    return gas.kelvin(plant.jar()) - 273.15;
  }

  double coldestCelsius() {
    return coldest - 273.15;
  }

  private void step(Balance balance) {
    gas = RungeKutta.step(balance, gas, balance.rate(gas), STEP);
    coldest = Math.min(coldest, gas.kelvin(plant.jar()));
  }
}
