package org.thumbseal.simulate;

import static org.assertj.core.api.Assertions.assertThat;
import static org.thumbseal.simulate.SimulationKind.*;

import java.util.List;
import java.util.OptionalDouble;
import java.util.stream.LongStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

/** Each kind is what it is called, whatever the seed. */
class SimulationKindTest {
  private static final int SEEDS = 12;

  private static List<TestTruth> truths(SimulationKind kind) {
    return LongStream.rangeClosed(1, SEEDS)
        .mapToObj(seed -> Simulation.of(kind, seed).truth())
        .flatMap(List::stream)
        .toList();
  }

  private static double rise(TestTruth truth) {
    return truth.riseTime().orElse(Double.POSITIVE_INFINITY);
  }

  private static double maximum(TestTruth truth) {
    return truth.maximumVacuum().orElse(Double.NaN);
  }

  @ParameterizedTest
  @EnumSource
  void codeNamesTheKind(SimulationKind kind) {
    assertThat(SimulationKind.ofCode(kind.code())).contains(kind);
    assertThat(kind.code()).matches("[a-z]+(-[a-z]+)*");
  }

  /** By the default criteria (common practice, no published source): 65 kPa in 10 s, 80 kPa. */
  @ParameterizedTest
  @EnumSource(
      names = {
        "SOUND",
        "LATE",
        "ALREADY_RUNNING",
        "OFF_WHILE_BLOCKED",
        "NOISY_LINE",
        "GAP",
        "RESTART",
        "RANGE_CLIPPED",
        "SENSOR_FAULT"
      })
  void soundPumpsHaveRoomToSpare(SimulationKind kind) {
    assertThat(truths(kind)).hasSize(SEEDS).allSatisfy(SimulationKindTest::isSound);
  }

  private static void isSound(TestTruth truth) {
    assertThat(truth.targetRise()).isEqualTo(65);
    assertThat(rise(truth)).isBetween(6.2, 8.9);
    assertThat(maximum(truth)).isBetween(86.0, 96.0);
    assertThat(truth.openVacuum()).isBetween(0.02, 0.6);
  }

  @Test
  void twoTestsAreTwoSoundOnes() {
    assertThat(truths(TWO_TESTS)).hasSize(2 * SEEDS).allSatisfy(SimulationKindTest::isSound);
  }

  @Test
  void thePinchedJarLeaksALittle() {
    assertThat(truths(PINCHED_HOSE))
        .hasSize(SEEDS)
        .allSatisfy(t -> assertThat(t.plant().leakLitresPerMinute()).isBetween(0.02, 0.5))
        .allSatisfy(t -> assertThat(t.plant().restingLeakLitresPerMinute()).isZero());
  }

  @Test
  void slowIsSlowAndNothingElse() {
    assertThat(truths(SLOW))
        .allSatisfy(t -> assertThat(rise(t)).isBetween(12.0, 18.0))
        .allSatisfy(t -> assertThat(maximum(t)).isGreaterThan(86));
  }

  @ParameterizedTest
  @EnumSource(names = {"LEAK", "WORN_PUMP"})
  void neitherFastNorHighEnough(SimulationKind kind) {
    assertThat(truths(kind))
        .hasSize(SEEDS)
        .allSatisfy(t -> assertThat(rise(t)).isGreaterThan(11))
        .allSatisfy(t -> assertThat(maximum(t)).isBetween(64.0, 77.0));
  }

  @Test
  void restrictionIsSlow() {
    assertThat(truths(RESTRICTION)).allSatisfy(t -> assertThat(rise(t)).isGreaterThan(14));
  }

  @Test
  void controlCapsASoundRise() {
    assertThat(truths(CONTROL_NOT_AT_MAXIMUM))
        .allSatisfy(t -> assertThat(rise(t)).isBetween(6.2, 8.9))
        .allSatisfy(t -> assertThat(maximum(t)).isBetween(68.0, 77.5));
  }

  @Test
  void reducedVolumeIsFastAndHigh() {
    assertThat(truths(REDUCED_VOLUME))
        .allSatisfy(t -> assertThat(rise(t)).isBetween(2.0, 5.6))
        .allSatisfy(t -> assertThat(maximum(t)).isGreaterThan(86));
  }

  @Test
  void blockedInletShowsBeforeTheTest() {
    assertThat(truths(BLOCKED_INLET))
        .allSatisfy(t -> assertThat(t.openVacuum()).isBetween(9.0, 30.0));
  }

  @Test
  void noVacuumHardlyPulls() {
    assertThat(truths(NO_VACUUM))
        .allSatisfy(t -> assertThat(maximum(t)).isBetween(7.5, 15.5))
        .allSatisfy(t -> assertThat(t.riseTime()).isEmpty());
  }

  @Test
  void altitudeIsSoundByRatioButCannotReachEightyKilopascals() {
    assertThat(truths(ALTITUDE))
        .allSatisfy(t -> assertThat(maximum(t)).isLessThan(80))
        .allSatisfy(t -> assertThat(ratio(t)).isGreaterThan(1.05 * 80 / 101.325))
        .allSatisfy(t -> assertThat(rise(t)).isBetween(6.2, 8.9));
  }

  private static double ratio(TestTruth truth) {
    return maximum(truth) * 1_000 / truth.plant().weather().pascals();
  }

  @Test
  void slippedHasNoRiseToTime() {
    assertThat(truths(SLIPPED))
        .hasSize(SEEDS)
        .allSatisfy(t -> assertThat(t.riseTime()).isEmpty())
        .allSatisfy(t -> assertThat(t.maximumVacuum()).isEmpty());
  }

  /** A slip that counts is a fall of more than 3 kPa. */
  @Test
  void slipsAreDeepEnough() {
    for (long seed = 1; seed <= SEEDS; seed++) {
      assertThat(fallInSlip(Simulation.of(SLIPPED, seed))).as("seed %d", seed).isGreaterThan(5e3);
    }
  }

  private static double fallInSlip(Scenario scenario) {
    List<Step> slip =
        scenario.script().steps().stream()
            .filter(s -> s.act() instanceof Act.SetInlet)
            .skip(1)
            .limit(2)
            .toList();
    Bench bench = new Bench(scenario.plant(), scenario.script());
    bench.advance(slip.get(0).seconds());
    double before = bench.vacuum();
    bench.advance(slip.get(1).seconds());
    return before - bench.vacuum();
  }

  @Test
  void releasedEarlyIsReleasedBeforeTheLimitIsMet() {
    assertThat(truths(RELEASED_EARLY))
        .hasSize(SEEDS)
        .allSatisfy(t -> assertThat(t.riseTime()).isEmpty())
        .allSatisfy(t -> assertThat(maximum(t)).isGreaterThan(15));
  }

  @ParameterizedTest
  @EnumSource(names = {"NEVER_BLOCKED", "IDLE"})
  void noTestAtAll(SimulationKind kind) {
    assertThat(truths(kind)).isEmpty();
  }

  /** Fixed conditions change the pump with them, so a sound one stays sound. */
  @Test
  void soundStaysSoundWithAJarAndAHeightOfOnesOwn() {
    Conditions conditions =
        new Conditions(
            OptionalDouble.of(4),
            OptionalDouble.of(1500),
            OptionalDouble.of(25),
            OptionalDouble.empty());
    Scenario scenario = Simulation.of(SOUND, 7, conditions);

    assertThat(scenario.sensor().identity().hertz()).isEqualTo(25);
    TestTruth truth = scenario.truth().get(0);
    assertThat(truth.plant().jar().litres()).isEqualTo(4);
    assertThat(truth.targetRise()).isBetween(53.0, 55.5);
    assertThat(rise(truth)).isBetween(6.2, 8.9);
  }
}
