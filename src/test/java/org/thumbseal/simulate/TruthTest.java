package org.thumbseal.simulate;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** The truth against closed forms; no sensor and no line has a part in it. */
class TruthTest {
  private static final double OPEN_PASCALS = 20;

  private static List<TestTruth> truth(Plant plant, Script script) {
    return new Scenario(plant, Sensor.ideal(100), Line.CLEAN, script, 1).truth();
  }

  private static Plant isothermal(double ambient, double highest) {
    Plant closed =
        new Plant(
            new Weather(ambient, 20),
            Jar.cylinder(2, Double.POSITIVE_INFINITY),
            Pump.of(30, 1 - highest / ambient),
            Circuit.tight(0));
    return closed.with(closed.circuit().inlet(closed.areaBalancedAt(OPEN_PASCALS)));
  }

  /**
   * Source: t65/tau = ln(v_max/(v_max - 65)), computed to three decimals; tau is 4 s here. The open
   * vacuum of 20 Pa shifts both ends of the rise.
   */
  @ParameterizedTest
  @CsvSource({"70, 2.639", "75, 2.015", "80, 1.674", "85, 1.447", "90, 1.281", "95, 1.153"})
  void riseTimeOfAnExponential(double highest, double ratio) {
    TestTruth truth =
        truth(isothermal(101_325, highest * 1_000), Script.running(3).block(60)).get(0);
    double far = highest - OPEN_PASCALS / 1_000;

    assertThat(truth.riseTime().orElseThrow() / 4)
        .isCloseTo(StrictMath.log(far / (far - 65)), within(1e-5))
        .isCloseTo(ratio, within(0.005));
    assertThat(truth.openVacuum()).isCloseTo(OPEN_PASCALS / 1_000, within(1e-5));
    assertThat(truth.maximumVacuum().orElseThrow()).isCloseTo(highest, within(1e-4));
  }

  /**
   * Source: the same healthy pump at height (90 kPa at sea level): 70.6 kPa at 2000 m (79 495 Pa).
   * The time to reach a share of ambient does not change with height.
   */
  @Test
  void heightLowersTheMaximumAndLeavesTheTimeToARatio() {
    double share = 90 / 101.325;
    Script script = Script.running(3).block(60);
    TestTruth sea = truth(isothermal(101_325, 101_325 * share), script).get(0);
    TestTruth high = truth(isothermal(79_495, 79_495 * share), script).get(0);

    assertThat(high.maximumVacuum().orElseThrow()).isCloseTo(70.6, within(0.05));
    assertThat(high.targetRise()).isCloseTo(51.00, within(0.005));
    assertThat(high.riseTime().orElseThrow())
        .isCloseTo(sea.riseTime().orElseThrow(), within(0.002));
  }

  @Test
  void aTestEndsWhenTheInletOpensOrTheRecordingEnds() {
    Script twice = Script.running(3).block(10).release(5).block(4.5);

    assertThat(truth(isothermal(101_325, 90_000), twice))
        .satisfiesExactly(
            t -> assertThat(List.of(t.occludedAt(), t.endedAt())).containsExactly(3.0, 13.0),
            t -> assertThat(List.of(t.occludedAt(), t.endedAt())).containsExactly(18.0, 22.5));
  }

  @Test
  void switchingOffWhileBlockedDoesNotEndIt() {
    Script script = Script.running(3).block(30).pumpOff(10).release(1);
    TestTruth truth = truth(isothermal(101_325, 90_000), script).get(0);

    assertThat(truth.endedAt()).isEqualTo(43);
    assertThat(truth.maximumVacuum().orElseThrow()).isCloseTo(89.95, within(0.05));
  }

  @Test
  void aSlipIsTheSameTestAndLeavesNothingToMeasure() {
    Script script = Script.running(3).block(4).slip(0.5, 0.5).block(30).release(1);

    assertThat(truth(isothermal(101_325, 90_000), script))
        .singleElement()
        .satisfies(t -> assertThat(t.occludedAt()).isEqualTo(3))
        .satisfies(t -> assertThat(t.riseTime()).isEmpty())
        .satisfies(t -> assertThat(t.maximumVacuum()).isEmpty());
  }

  @Test
  void whatIsBlockedForLessThanASecondHasNoMaximum() {
    Script script = Script.running(3).block(0.9).release(1);

    assertThat(truth(isothermal(101_325, 90_000), script).get(0).maximumVacuum()).isEmpty();
  }

  /** A script that goes on after another does not reach back into it. */
  @Test
  void scriptsFollowOneAnother() {
    Script running = Script.running(3).block(5).release(1);
    Script both = Script.quiet(10).followedBy(running);

    assertThat(both.end()).isEqualTo(19);
    assertThat(both.steps()).extracting(Step::seconds).containsExactly(10.0, 13.0, 18.0);
  }
}
