package org.thumbseal.simulate;

/**
 * The gas in the jar.
 *
 * @param pascals absolute pressure, Pa
 * @param moles amount, mol
 */
record GasState(double pascals, double moles) {

  /** Gas of wall temperature at a pressure. */
  static GasState atRest(Plant plant, double pascals) {
    double amount = pascals * plant.jar().cubicMetres() / (Air.R * plant.weather().kelvin());
    return new GasState(pascals, amount);
  }

  double kelvin(Jar jar) {
    return pascals * jar.cubicMetres() / (moles * Air.R);
  }

  GasState plus(GasState rate, double seconds) {
    return new GasState(pascals + seconds * rate.pascals, moles + seconds * rate.moles);
  }
}
