package org.thumbseal.simulate;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** Leaks of known size. */
class OrificeTest {
  private static final Weather ROOM = new Weather(101_325, 20);
  private static final double LITRES_A_MINUTE = 1 / 60_000.0;

  private static double area(double millimetres, double coefficient) {
    return coefficient * Math.PI / 4 * millimetres * millimetres * 1e-6;
  }

  /** Flow in m3/s of ambient air. */
  private static double ambientFlow(double area, double downstream) {
    double moles = area * Orifice.molesFromAmbient(ROOM, downstream);
    return moles * Air.R * ROOM.kelvin() / ROOM.pascals();
  }

  private static Plant leaking(double litres, double litresPerMinute, double area) {
    return new Plant(
        ROOM,
        Jar.cylinder(litres, Double.POSITIVE_INFINITY),
        Pump.of(litresPerMinute, 0.1),
        Circuit.tight(0).leaking(area));
  }

  /** Source: (2/2.4)^3.5 = 0.528282, the critical ratio of air in leak-flow handbooks. */
  @Test
  void criticalRatio() {
    assertThat(Orifice.CRITICAL_RATIO).isCloseTo(0.528282, within(5e-7));
  }

  /** Source: choked flow of air at 20 degC, 198.63 m/s times the area, referred to ambient. */
  @ParameterizedTest
  @ValueSource(doubles = {0, 20_000, 53_500})
  void chokedFlowDoesNotDependOnTheVacuum(double downstream) {
    assertThat(ambientFlow(1, downstream)).isCloseTo(198.63, within(0.02));
  }

  /** Source: leak sizes computed for choked air at 20 degC, to the last digit given. */
  @ParameterizedTest
  @CsvSource({
    "0.1, 0.058, 0.080, 0.094, 0.0005",
    "0.2, 0.232, 0.318, 0.374, 0.0005",
    "0.3, 0.522, 0.716, 0.842, 0.0005",
    "0.5, 1.45, 1.99, 2.34, 0.005",
    "0.8, 3.71, 5.09, 5.99, 0.005",
    "1.0, 5.80, 7.96, 9.36, 0.005"
  })
  void flowOfAHole(double diameter, double sharp, double rounded, double ideal, double digit) {
    assertThat(ambientFlow(area(diameter, 0.62), 2e4) / LITRES_A_MINUTE)
        .isCloseTo(sharp, within(1.1 * digit));
    assertThat(ambientFlow(area(diameter, 0.85), 2e4) / LITRES_A_MINUTE)
        .isCloseTo(rounded, within(1.1 * digit));
    assertThat(ambientFlow(area(diameter, 1), 2e4) / LITRES_A_MINUTE)
        .isCloseTo(ideal, within(1.1 * digit));
  }

  /** Source: same table, loss of maximum vacuum at S0 = 30 L/min and fall in a 2 L jar, Cd 0.85. */
  @ParameterizedTest
  @CsvSource({
    "0.1, 0.27, 0.067",
    "0.2, 1.07, 0.269",
    "0.3, 2.42, 0.605",
    "0.5, 6.72, 1.68",
    "0.8, 17.2, 4.30"
  })
  void leakLowersTheMaximumAndLetsItDecay(double diameter, double loss, double fallPerSecond) {
    Plant plant = leaking(2, 30, area(diameter, 0.85));
    JarRun run = JarRun.fromAmbient(plant).run(Setting.RUNNING_BLOCKED, 80);
    double held = run.vacuum();
    run.run(new Setting(0, 0), 0.5);

    assertThat(101.325 * 0.9 - held).isCloseTo(loss, within(0.006 * Math.max(1, loss)));
    assertThat(2 * (held - run.vacuum()))
        .isCloseTo(fallPerSecond, within(0.006 * Math.max(0.2, fallPerSecond)));
  }

  /**
   * Source: 40 CFR 1065.644, worked example of a vacuum-decay leak check: 2.0000 L from 25.300 to
   * 50.600 kPa in 70 s at 293.15 K is 2.9657e-4 mol/s.
   */
  @Test
  void vacuumDecayExample() {
    double area = 2.9657e-4 / Orifice.molesFromAmbient(ROOM, 30_000);
    JarRun run = new JarRun(leaking(2, 30, area), 25_300).run(new Setting(0, 0), 70);

    assertThat(run.kilopascals()).isCloseTo(50.600, within(1e-3));
  }

  /** The laminar end joins the square-root law without a step. */
  @Test
  void laminarEndIsContinuous() {
    double edge = Orifice.LAMINAR_RATIO * ROOM.pascals();

    assertThat(Orifice.molesFromAmbient(ROOM, edge * (1 + 1e-12)))
        .isCloseTo(Orifice.molesFromAmbient(ROOM, edge), within(1e-6));
    assertThat(Orifice.molesFromAmbient(ROOM, ROOM.pascals())).isZero();
  }
}
