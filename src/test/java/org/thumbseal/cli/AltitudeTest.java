package org.thumbseal.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Locale;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * A sound pump at 2000 m, where the air presses with 79.495 kPa (ISO 2533): 80 kPa cannot exist
 * there.
 */
class AltitudeTest {
  private static final String WHY =
      "altitude-adjusted: The air presses with 79.5 kPa here: no pump of any kind can reach 80.0"
          + " kPa.";

  @TempDir private static Path folder;
  private static Path capture = Path.of("");

  @BeforeAll
  static void simulate() {
    capture = folder.resolve("high.log");
    CommandRun run =
        CommandRun.of("simulate", "sound", "--altitude-m", 2000, "--seed", 1, "--out", capture);
    assertThat(run.code()).as(run.err()).isZero();
  }

  /** 65 and 80 kPa are worth 51.0 and 62.8 kPa there: share 0.6415 and 0.78954 of the air. */
  @Test
  void scaledLimitsSayWhyTheyWereScaled() {
    CommandRun run = CommandRun.of("replay", "--ambient-kpa", 79.495, capture);

    assertThat(run.out())
        .startsWith("PASS")
        .contains(
            WHY
                + " So the limits were multiplied by 0.785: a rise of 51.0 instead of 65.0 kPa, a"
                + " maximum of 62.8 instead of 80.0 kPa.");
    assertThat(run.code()).isZero();
  }

  @Test
  void strictLimitsSayThatThePumpIsNotToBlame() throws Exception {
    Path strict = Files.writeString(folder.resolve("strict.json"), "{\"altitudeRule\":\"strict\"}");

    CommandRun run =
        CommandRun.of("replay", "--ambient-kpa", 79.495, "--criteria", strict, capture);

    assertThat(run.out())
        .startsWith("INVALID")
        .contains(
            WHY
                + " The criteria ask for it all the same, so this says nothing about the pump. Use"
                + " criteria with the altitude rule 'scale'.");
    assertThat(run.code()).isEqualTo(1);
  }

  /** At 1000 m 80 kPa can exist, but it is 89 % of the air: the limits are scaled without it. */
  @Test
  void lowerDownNothingIsSaidToBeImpossible() {
    CommandRun run = CommandRun.of("replay", "--ambient-kpa", 89.875, capture);

    assertThat(run.out())
        .contains("altitude-adjusted: The air presses with 89.9 kPa here, not with the 101.3 kPa")
        .contains("a rise of 57.7 instead of 65.0 kPa, a maximum of 71.0 instead of 80.0 kPa")
        .doesNotContain("no pump of any kind");
  }

  /** At 5500 m the air presses with 50.5 kPa: whoever wrote that did not test there. */
  @Test
  void moreVacuumThanThereIsAirIsAContradiction() {
    Path gauge = Path.of("fixtures/independent/healthy-100hz.log");
    CommandRun run = CommandRun.of("replay", "--ambient-kpa", 50.5, gauge);

    assertThat(run.out())
        .startsWith("INVALID")
        .containsPattern(
            "sensor-fault: The vacuum reached [0-9.]+ kPa \\+- [0-9.]+ kPa, and the air")
        .contains("presses with 50.5 kPa only (given): one of the two is wrong.");
  }

  /** Less air than vacuum, but by less than the sensor may be wrong: nothing can be said. */
  @Test
  void whatTheUncertaintiesAllowIsNoContradiction() {
    Path gauge = Path.of("fixtures/independent/healthy-100hz.log");
    double maximum =
        Answer.measured(Answer.to("replay", "--json", gauge).onlyDocument(), "maximumVacuum");
    CommandRun run =
        CommandRun.of(
            "replay", "--ambient-kpa", String.format(Locale.ROOT, "%.2f", maximum - 1), gauge);

    assertThat(run.out()).startsWith("PASS").doesNotContain("sensor-fault");
  }
}
