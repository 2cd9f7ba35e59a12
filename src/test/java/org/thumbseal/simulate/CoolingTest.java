package org.thumbseal.simulate;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.aggregator.ArgumentsAccessor;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * The gas cools as it is pumped. Plants at sea level, wall at 20 degC, ultimate pressure 15 kPa;
 * the pump draws gas as cold as it is in the jar unless it is said otherwise.
 */
class CoolingTest {
  private static final double AMBIENT = 101_325;
  private static final double ULTIMATE = 15_000;
  private static final Setting PUMP_OFF = new Setting(0, 0);

  private static Plant plant(double litres, double litresPerMinute, double transfer) {
    return new Plant(
        new Weather(AMBIENT, 20),
        Jar.cylinder(litres, transfer),
        Pump.of(litresPerMinute, ULTIMATE / AMBIENT),
        Circuit.tight(0).warmed(0));
  }

  /**
   * Source: thermal table computed before and apart from this program (lumped gas); it does not
   * state the area of the wall, so its last digit is met within one.
   */
  @ParameterizedTest
  @CsvSource({
    "2, 30, 5, 5.09, -15, 0.18",
    "2, 30, 10, 5.40, -4, 0.07",
    "2, 30, 20, 5.52, 5, 0.03",
    "2, 20, 5, 7.95, -8, 0.47",
    "2, 20, 10, 8.23, 2, 0.21",
    "4, 30, 5, 10.7, -7, 1.01",
    "4, 30, 10, 11.0, 3, 0.47",
    "1, 30, 5, 2.40, -24, 0.01",
    "1, 30, 10, 2.61, -11, 0.00"
  })
  void thermalTable(ArgumentsAccessor row) {
    Outcome outcome = Outcome.of(row);
    double digit = row.getDouble(3) < 10 ? 0.01 : 0.1;

    assertThat(outcome.rise()).isCloseTo(row.getDouble(3), within(digit));
    assertThat(outcome.coldest()).isCloseTo(row.getDouble(4), within(1.0));
    assertThat(outcome.reheating()).isCloseTo(row.getDouble(5), within(0.01));
  }

  /**
   * The same rows solved with SciPy 1.17 {@code solve_ivp} (adaptive Runge-Kutta 4(5), relative
   * tolerance 1e-10) for the area of this jar.
   */
  @ParameterizedTest
  @CsvSource({
    "2, 30, 5, 5.0900, -15.07, 0.175",
    "2, 30, 10, 5.4020, -3.36, 0.074",
    "2, 20, 5, 7.9530, -7.89, 0.464",
    "4, 30, 5, 10.6500, -6.96, 1.018",
    "4, 30, 10, 10.9880, 2.83, 0.472",
    "1, 30, 10, 2.6100, -10.87, 0.003"
  })
  void sameAsAnAdaptiveSolver(ArgumentsAccessor row) {
    Outcome outcome = Outcome.of(row);

    assertThat(outcome.rise()).isCloseTo(row.getDouble(3), within(0.0015));
    assertThat(outcome.coldest()).isCloseTo(row.getDouble(4), within(0.005));
    assertThat(outcome.reheating()).isCloseTo(row.getDouble(5), within(0.0006));
  }

  /**
   * The same solver where hose and valves warm the gas half way or all the way to the wall: the
   * rise is slower, because the same volume of warmer gas is less gas.
   */
  @ParameterizedTest
  @CsvSource({
    "2, 30, 5, 5.3857, -14.01, 0.195, 0.5",
    "2, 30, 5, 5.6634, -13.07, 0.217, 1",
    "2, 30, 10, 5.7544, -2.31, 0.084, 1",
    "4, 30, 5, 11.4914, -5.63, 1.142, 1",
    "1, 30, 10, 2.8584, -9.22, 0.004, 1"
  })
  void gasWarmedOnItsWayToThePump(ArgumentsAccessor row) {
    Outcome outcome = Outcome.of(row);

    assertThat(outcome.rise()).isCloseTo(row.getDouble(3), within(0.0015));
    assertThat(outcome.coldest()).isCloseTo(row.getDouble(4), within(0.005));
    assertThat(outcome.reheating()).isCloseTo(row.getDouble(5), within(0.0006));
  }

  /**
   * Closed form: in an insulated jar the gas expands isentropically, P = m^1.4 in shares of
   * ambient; a pump without dead volume that takes it in at wall temperature draws dm/dt = -k P,
   * hence P = (1 + 0.4 k t)^-3.5.
   */
  @Test
  void insulatedJarBehindAWarmHose() {
    Plant jarGas = plant(2, 30, 0).with(Pump.of(30, 0));
    Plant wallGas = jarGas.with(jarGas.circuit().warmed(1));

    assertThat(JarRun.fromAmbient(wallGas).run(Setting.RUNNING_BLOCKED, 4).kilopascals())
        .isCloseTo(101.325 * StrictMath.pow(1.4, -3.5), within(1e-6));
    assertThat(JarRun.fromAmbient(jarGas).run(Setting.RUNNING_BLOCKED, 4).kilopascals())
        .isCloseTo(101.325 * StrictMath.exp(-1.4), within(1e-6));
  }

  /** Rise to 65 kPa in s, coldest gas in degC, fall in the first 5 s after a stop at 15 s, kPa. */
  private record Outcome(double rise, double coldest, double reheating) {
    static Outcome of(ArgumentsAccessor row) {
      Plant cold = plant(row.getDouble(0), row.getDouble(1), row.getDouble(2));
      double warming = row.size() > 6 ? row.getDouble(6) : 0;
      JarRun run = JarRun.fromAmbient(cold.with(cold.circuit().warmed(warming)));
      double rise = run.secondsUntil(r -> r.vacuum() >= 65);
      run.run(Setting.RUNNING_BLOCKED, 15 - rise);
      double held = run.vacuum();
      run.run(PUMP_OFF, 5);
      return new Outcome(rise, run.coldestCelsius(), held - run.vacuum());
    }
  }

  /** Closed form: v = (p_b - p_ult)(1 - exp(-t S0/V)), the isothermal limit. */
  @ParameterizedTest
  @CsvSource({"0.5", "2", "5.59", "20"})
  void isothermalIsExponential(double seconds) {
    Plant plant = plant(2, 30, Double.POSITIVE_INFINITY);
    double expected = 86.325 * (1 - StrictMath.exp(-seconds / 4));

    assertThat(JarRun.fromAmbient(plant).run(Setting.RUNNING_BLOCKED, seconds).vacuum())
        .isCloseTo(expected, within(1e-7));
  }

  /** A very good conductor is the isothermal limit, reached from the other side. */
  @Test
  void strongExchangeTendsToIsothermal() {
    double strong =
        JarRun.fromAmbient(plant(2, 30, 20_000)).run(Setting.RUNNING_BLOCKED, 4).vacuum();

    assertThat(strong).isCloseTo(86.325 * (1 - StrictMath.exp(-1)), within(0.02));
  }

  /** Closed form: without exchange the rate is gamma times the isothermal one, 4.00 s. */
  @Test
  void adiabaticIsFasterByGamma() {
    double seconds = JarRun.fromAmbient(plant(2, 30, 0)).secondsUntil(r -> r.vacuum() >= 65);

    assertThat(seconds).isCloseTo(4 / 1.4 * StrictMath.log(86.325 / 21.325), within(1.1e-3));
  }

  /**
   * Textbook result (from memory): air let into an evacuated insulated vessel ends gamma times as
   * hot as outside, in kelvin, when it has filled.
   */
  @Test
  void fillingAnEmptyInsulatedVesselHeatsByGamma() {
    Plant insulated = plant(2, 30, 0);
    JarRun empty = new JarRun(insulated.with(Circuit.tight(2e-6)), 1);
    empty.run(new Setting(0, 1), 20);

    assertThat(empty.vacuum()).isLessThan(0.01);
    assertThat(empty.celsius() + 273.15).isCloseTo(1.4 * 293.15, within(0.1));
  }
}
