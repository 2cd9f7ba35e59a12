package org.thumbseal.cli;

import java.util.OptionalDouble;
import org.jspecify.annotations.Nullable;
import org.thumbseal.simulate.Conditions;
import org.thumbseal.simulate.Scenario;
import org.thumbseal.simulate.Simulation;
import org.thumbseal.simulate.SimulationKind;
import picocli.CommandLine.Option;

/** Options that say what is simulated; what they leave open is drawn from the seed. */
final class ScenarioOptions {
  @Option(
      names = "--seed",
      paramLabel = "N",
      defaultValue = "1",
      description = "the same seed gives the same bytes (default: ${DEFAULT-VALUE})")
  private long seed;

  @Option(
      names = "--repeat",
      paramLabel = "N",
      defaultValue = "1",
      description = "so many pumps of the kind one after another (default: ${DEFAULT-VALUE})")
  private int repeat;

  @Option(names = "--jar-l", paramLabel = "N", description = "jar volume, 0.3 to 5 L")
  private @Nullable Double litres;

  @Option(names = "--altitude-m", paramLabel = "N", description = "height above sea level, m")
  private @Nullable Double altitude;

  @Option(names = "--rate", paramLabel = "HZ", description = "samples a second, 10 to 1000")
  private @Nullable Double hertz;

  @Option(
      names = "--idle-s",
      paramLabel = "N",
      description = "length of the kind idle in seconds (default: one hour)")
  private @Nullable Double idleSeconds;

  @Option(
      names = "--sound-twin",
      description =
          "the pump of this kind and seed on an earlier day, when it was sound; same jar, sensor"
              + " and place")
  private boolean soundTwin;

  /**
   * The scenario asked for.
   *
   * @throws IllegalArgumentException if a value is out of range, in words for a person
   */
  Scenario scenario(SimulationKind kind) {
    Conditions conditions =
        new Conditions(given(litres), given(altitude), given(hertz), given(idleSeconds));
    return soundTwin
        ? Simulation.soundTwin(kind, seed, conditions)
        : Simulation.of(kind, seed, conditions, repeat);
  }

  private static OptionalDouble given(@Nullable Double value) {
    return value == null ? OptionalDouble.empty() : OptionalDouble.of(value);
  }
}
