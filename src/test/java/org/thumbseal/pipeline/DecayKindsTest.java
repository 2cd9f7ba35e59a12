package org.thumbseal.pipeline;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Optional;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import org.junit.jupiter.params.provider.EnumSource.Mode;
import org.thumbseal.measurement.Decay;
import org.thumbseal.simulate.Act;
import org.thumbseal.simulate.Scenario;
import org.thumbseal.simulate.Simulation;
import org.thumbseal.simulate.SimulationKind;

/** A decay is told where there is one, and only there. */
class DecayKindsTest {
  private static final int SEEDS = 8;

  @ParameterizedTest
  @EnumSource(
      mode = Mode.EXCLUDE,
      names = {"IDLE", "NEVER_BLOCKED", "OFF_WHILE_BLOCKED", "PINCHED_HOSE"})
  void aRunningPumpIsNoDecay(SimulationKind kind) {
    for (long seed = 1; seed <= SEEDS; seed++) {
      Scenario scenario = Simulation.of(kind, seed);
      if (!isLeftAlone(scenario)) {
        assertThat(Decays.of(scenario, GradingSettings.DEFAULT))
            .as("%s, seed %s", kind, seed)
            .isEmpty();
      }
    }
  }

  /** Whether the pump is switched off while the inlet is blocked. */
  private static boolean isLeftAlone(Scenario scenario) {
    boolean blocked = false;
    for (var step : scenario.script().steps()) {
      if (step.act() instanceof Act.SetInlet inlet) {
        blocked = inlet.opening() == 0;
      } else if (blocked && step.act() instanceof Act.SwitchPump pump && !pump.on()) {
        return true;
      }
    }
    return false;
  }

  @ParameterizedTest
  @EnumSource(names = {"LEAK", "WORN_PUMP"})
  void aPumpThatIsSwitchedOffIsOne(SimulationKind kind) {
    for (long seed = 1; seed <= 2 * SEEDS; seed++) {
      Scenario scenario = Simulation.of(kind, seed);
      if (isLeftAlone(scenario)) {
        Optional<Decay> decay = Decays.of(scenario, GradingSettings.DEFAULT);
        assertThat(decay).as("%s, seed %s", kind, seed).isPresent();
      }
    }
  }
}
