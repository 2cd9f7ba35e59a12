package org.thumbseal.simulate;

/** The classic fourth-order step. */
final class RungeKutta {
  private RungeKutta() {}

  /** The state after h seconds; k1 is the rate at its start. */
  static GasState step(Balance balance, GasState gas, GasState k1, double h) {
    GasState k2 = balance.rate(gas.plus(k1, h / 2));
    GasState k3 = balance.rate(gas.plus(k2, h / 2));
    GasState k4 = balance.rate(gas.plus(k3, h));
    return gas.plus(k1, h / 6).plus(k2, h / 3).plus(k3, h / 3).plus(k4, h / 6);
  }
}
