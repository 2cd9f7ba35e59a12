package org.thumbseal.simulate;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.IntStream;
import java.util.stream.LongStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

/** Two days of one pump. */
class PumpHistoryTest {
  private static final int SEEDS = 8;

  private static List<PumpHistory> histories(FaultKind kind) {
    return LongStream.rangeClosed(1, SEEDS)
        .mapToObj(seed -> PumpHistory.of(kind, seed, Breadth.WIDE))
        .toList();
  }

  private static TestTruth truth(Scenario day) {
    return day.truth().get(0);
  }

  private static double share(Scenario day) {
    TestTruth truth = truth(day);
    return truth.maximumVacuum().orElseThrow() * 1_000 / truth.plant().weather().pascals();
  }

  private static List<String> lines(Scenario scenario) {
    List<String> lines = new ArrayList<>();
    scenario.lines().forEachRemaining(l -> lines.add(l.line()));
    return lines;
  }

  @ParameterizedTest
  @EnumSource
  void bothDaysHaveOnePumpJarAndSensor(FaultKind kind) {
    assertThat(histories(kind))
        .allSatisfy(
            h -> {
              assertThat(h.later().sensor().identity()).isEqualTo(h.sound().sensor().identity());
              assertThat(h.later().plant().jar().nominalLitres())
                  .isEqualTo(h.sound().plant().jar().nominalLitres());
              assertThat(h.later().plant().circuit().warming())
                  .isEqualTo(h.sound().plant().circuit().warming());
              assertThat(h.sound().plant().fault()).isEqualTo(Fault.NONE);
              assertThat(h.later().plant().fault().kind()).isEqualTo(kind);
            });
  }

  @Test
  void weatherZeroScriptAndNoiseAreOfTheDay() {
    assertThat(histories(FaultKind.NONE))
        .allSatisfy(
            h -> {
              assertThat(h.later().plant().weather()).isNotEqualTo(h.sound().plant().weather());
              assertThat(h.later().sensor().transducer().offset())
                  .isNotEqualTo(h.sound().sensor().transducer().offset());
              assertThat(h.later().script()).isNotEqualTo(h.sound().script());
              assertThat(h.later().seed()).isNotEqualTo(h.sound().seed());
            });
  }

  @Test
  void theSameSeedIsTheSameHistory() {
    PumpHistory one = PumpHistory.of(FaultKind.LEAK, 5, Breadth.WIDE);
    PumpHistory again = PumpHistory.of(FaultKind.LEAK, 5, Breadth.WIDE);

    assertThat(again).isEqualTo(one);
    assertThat(lines(again.later())).isEqualTo(lines(one.later()));
  }

  /** The sound pump is the same whatever becomes of it. */
  @Test
  void theFaultLeavesThePast() {
    assertThat(PumpHistory.of(FaultKind.LEAK, 5, Breadth.WIDE).sound())
        .isEqualTo(PumpHistory.of(FaultKind.RESTRICTION, 5, Breadth.WIDE).sound());
  }

  /**
   * Source: V dp/dt = -S0 (p - p_ult) + Q: a choked leak of a share of S0 takes that share of
   * ambient from the maximum.
   */
  @Test
  void severityOfALeakIsWhatItTakesFromTheMaximum() {
    for (PumpHistory history : histories(FaultKind.LEAK)) {
      double lost = share(history.sound()) - share(history.later());
      double severity = history.later().plant().fault().severity();

      // Two thumbs of up to 0.2 % and the last of the climb stand between the two.
      assertThat(lost).isCloseTo(severity, within(0.007));
    }
  }

  @Test
  void severityOfARestrictionIsWhatItTakesFromTheFreeFlow() {
    for (PumpHistory history : histories(FaultKind.RESTRICTION)) {
      Plant later = history.later().plant();
      Plant free = later.with(later.circuit().filtered(Double.POSITIVE_INFINITY));
      GasState ambient = GasState.atRest(later, later.weather().pascals());
      double passed =
          new Balance(later, Setting.RUNNING_BLOCKED).molesOut(ambient)
              / new Balance(free, Setting.RUNNING_BLOCKED).molesOut(ambient);

      // The weather of the day moves the ambient pressure by 1.5 % at most.
      assertThat(1 - passed).isCloseTo(later.fault().severity(), within(0.015));
    }
  }

  @ParameterizedTest
  @EnumSource(names = {"WORN_VALVES", "CONTROL_NOT_AT_MAXIMUM", "NO_VACUUM"})
  void severityIsTheShareOfTheVacuumLost(FaultKind kind) {
    for (PumpHistory history : histories(kind)) {
      double left = share(history.later()) / share(history.sound());

      assertThat(1 - left).isCloseTo(history.later().plant().fault().severity(), within(0.03));
    }
  }

  @Test
  void lostSpeedAndVolumeAndAnInletAreWhatTheySay() {
    IntStream.range(0, SEEDS)
        .forEach(
            i -> {
              Scenario slow = histories(FaultKind.LOST_SPEED).get(i).later();
              Scenario small = histories(FaultKind.REDUCED_VOLUME).get(i).later();
              Scenario narrow = histories(FaultKind.BLOCKED_INLET).get(i).later();
              Plant sound = histories(FaultKind.NONE).get(i).later().plant();

              assertThat(1 - slow.plant().pump().speed() / sound.pump().speed())
                  .isCloseTo(slow.plant().fault().severity(), within(1e-9));
              assertThat(1 - small.plant().jar().litres() / sound.jar().litres())
                  .isCloseTo(small.plant().fault().severity(), within(1e-9));
              assertThat(truth(narrow).openVacuum() * 1_000 / narrow.plant().reachable())
                  .isCloseTo(narrow.plant().fault().severity(), within(0.01));
            });
  }

  /** Choked flow of air at 20 degC: 198.63 m/s times the area, referred to ambient. */
  @Test
  void leaksAreToldInLitresAMinute() {
    Plant plant =
        new Plant(
            new Weather(101_325, 20),
            Jar.cylinder(2, 10),
            Pump.of(30, 0.1).leakingAtRest(2e-7),
            Circuit.tight(0).leaking(1e-7));

    assertThat(plant.leakLitresPerMinute()).isCloseTo(198.63e-7 * 60_000, within(2e-4));
    assertThat(plant.restingLeakLitresPerMinute()).isCloseTo(2 * 198.63e-7 * 60_000, within(4e-4));
  }

  @ParameterizedTest
  @EnumSource(
      names = {"LEAK", "WORN_PUMP", "SLOW", "RESTRICTION", "REDUCED_VOLUME", "BLOCKED_INLET"})
  void aReadyMadeKindHasItsSoundTwin(SimulationKind kind) {
    for (long seed = 1; seed <= SEEDS; seed++) {
      Scenario later = Simulation.of(kind, seed);
      Scenario twin = Simulation.soundTwin(kind, seed, Conditions.NONE);

      assertThat(truth(twin).riseTime().orElseThrow()).isBetween(6.0, 9.6);
      assertThat(twin.plant().fault()).isEqualTo(Fault.NONE);
      assertThat(later.plant().fault()).isNotEqualTo(Fault.NONE);
      assertThat(twin.plant().jar().nominalLitres()).isEqualTo(later.plant().jar().nominalLitres());
      assertThat(twin.sensor().identity()).isEqualTo(later.sensor().identity());
      assertThat(twin.plant().pump().strokeHertz()).isEqualTo(later.plant().pump().strokeHertz());
    }
  }
}
