package org.thumbseal.simulate;

/**
 * Mass and energy balance of the gas in the jar.
 *
 * <p>The pump draws S p = S0 (p - p_ult) at the temperature the gas has where it takes it in: that
 * of the jar, of the wall, or between them, as hose and valves have warmed it. What leaves the jar
 * leaves at the jar's temperature; what enters has that of the air; the wall gives heat.
 */
final class Balance {
  /** Above its set vacuum by this much, the control passes all that the pump draws, Pa. */
  private static final double RELIEF_BAND_PASCALS = 500;

  private final Plant plant;
  private final Setting setting;
  private final double fixedArea;
  private final double reliefAreaPerPascal;

  Balance(Plant plant, Setting setting) {
    this.plant = plant;
    this.setting = setting;
    this.fixedArea =
        plant.circuit().inletArea() * setting.opening()
            + plant.circuit().leakArea()
            + plant.pump().restingLeak() * setting.resting();
    this.reliefAreaPerPascal = reliefAreaPerPascal(plant);
  }

  /** Rates of pressure, Pa/s, and amount, mol/s. */
  GasState rate(GasState gas) {
    double kelvin = gas.kelvin(plant.jar());
    double in = molesIn(gas, kelvin);
    double out = molesOut(gas);
    double power = Air.CP * (in * inflowKelvin(in, kelvin) - out * kelvin);
    return new GasState(pressureRate(power, in - out, kelvin), in - out);
  }

  /** What the pump draws, mol/s. */
  double molesOut(GasState gas) {
    double jar = gas.kelvin(plant.jar());
    double drawn = jar + plant.circuit().warming() * (plant.weather().kelvin() - jar);
    return throughput(gas.pascals()) / (Air.R * drawn);
  }

  /** Fastest rate at which the open areas pull the pressure towards ambient, 1/s. */
  double stiffness() {
    return Air.GAMMA * openRate();
  }

  /** Rate at which the open areas level a small difference at constant temperature, 1/s. */
  double openRate() {
    double perPascal = fixedArea * Orifice.steepest(plant.weather());
    return perPascal * Air.R * plant.weather().kelvin() / plant.jar().cubicMetres();
  }

  private double pressureRate(double power, double moles, double kelvin) {
    double wall = plant.weather().kelvin();
    double volume = plant.jar().cubicMetres();
    if (Double.isInfinite(plant.jar().wallConductance())) {
      return moles * Air.R * wall / volume;
    }
    double heat = plant.jar().wallConductance() * (wall - kelvin);
    return (Air.GAMMA - 1) / volume * (power + heat);
  }

  private double molesIn(GasState gas, double kelvin) {
    double ambient = plant.weather().pascals();
    if (gas.pascals() > ambient) {
      return -fixedArea * Orifice.moles(gas.pascals(), kelvin, ambient);
    }
    double excess = ambient - gas.pascals() - plant.circuit().reliefVacuum();
    double area = fixedArea + Math.max(0, excess) * reliefAreaPerPascal;
    return area == 0 ? 0 : area * Orifice.molesFromAmbient(plant.weather(), gas.pascals());
  }

  private double inflowKelvin(double moles, double kelvin) {
    return moles < 0 ? kelvin : plant.weather().kelvin();
  }

  private double throughput(double pascals) {
    double speed = plant.pump().speed() * setting.drawing();
    double ultimate = plant.pump().ultimateFraction() * plant.weather().pascals();
    if (pascals <= ultimate || speed == 0) {
      return 0;
    }
    double conductance = plant.circuit().filterConductance();
    double atPump =
        Double.isInfinite(conductance)
            ? pascals
            : behindFilter(pascals, speed, ultimate, conductance);
    return speed * (atPump - ultimate);
  }

  /** Pressure at which filter and pump pass the same: c (p1^2 - p2^2)/2 = s (p2 - u). */
  private static double behindFilter(double p1, double s, double u, double c) {
    return (Math.sqrt(s * s + 2 * c * (s * u + c / 2 * p1 * p1)) - s) / c;
  }

  private static double reliefAreaPerPascal(Plant plant) {
    double ambient = plant.weather().pascals();
    double pressure = ambient - plant.circuit().reliefVacuum();
    double drawn = plant.pump().speed() * (pressure - plant.pump().ultimateFraction() * ambient);
    if (!(drawn > 0)) {
      return 0;
    }
    double moles = drawn / (Air.R * plant.weather().kelvin());
    return moles / Orifice.molesFromAmbient(plant.weather(), pressure) / RELIEF_BAND_PASCALS;
  }
}
