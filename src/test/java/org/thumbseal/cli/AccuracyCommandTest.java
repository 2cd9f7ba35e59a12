package org.thumbseal.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The table of accuracy, through the program. */
class AccuracyCommandTest {
  @TempDir private Path folder;

  @Test
  void tenPumpsGiveTheSameTableEachTime() {
    CommandRun first = CommandRun.of("accuracy", "--pumps", "10", "--seed", "4", "--findings");
    CommandRun again = CommandRun.of("accuracy", "--pumps", "10", "--seed", "4", "--findings");

    assertThat(again.out()).isEqualTo(first.out());
    assertThat(first.out().lines().findFirst()).contains("10 simulated pumps, seed 4");
    assertThat(first.out())
        .contains("| riseTime error, 95 % ", "coverage of U, maximumVacuum, gain normal")
        .containsPattern("\\| one test found, 1 % bad lines +\\| 100 % +\\| 10 of 10 +\\| met")
        .containsPattern("\\| false passes, gain .*\\| 0 of \\d bad pumps +\\| met");
    assertThat(first.err()).contains("pumps: 10 of 10", "findings: 10 of 10");
    assertThat(first.code()).isEqualTo(first.out().contains("NOT MET") ? 1 : 0);
  }

  @Test
  void anotherSeedIsOtherPumps() {
    assertThat(CommandRun.of("accuracy", "--pumps", "2", "--seed", "5").out())
        .isNotEqualTo(CommandRun.of("accuracy", "--pumps", "2", "--seed", "6").out());
  }

  /** Captures of another model; every bar that can be held against them is met. */
  @Test
  void capturesWithATruthBesideThem() {
    CommandRun run = CommandRun.of("accuracy", "--captures", "fixtures/independent");

    assertThat(run.out())
        .startsWith("12 captures with a test in them\n")
        .containsPattern("riseTime error.*n = 10\\) +\\| met")
        .containsPattern("maximumVacuum error.*n = 10\\) +\\| met")
        .containsPattern("\\| slow \\| [+-]0\\.00\\d\\d \\|");
    assertThat(run.err()).isEmpty();
    assertThat(run.code()).isZero();
  }

  @Test
  void wrongUseIsOneLineAndTwo() throws IOException {
    Files.writeString(folder.resolve("truth.json"), "{\"a\": {\"occludedAt\": 3}}");

    assertRefused("--pumps must be between 1 and 100000, not 0", "--pumps", "0");
    assertRefused("no such file", "--captures", folder.resolve("none"));
    assertRefused("a.log: named in truth.json, but not there", "--captures", folder);
    Files.writeString(folder.resolve("a.log"), "no capture");
    assertRefused("a.log: not a capture file", "--captures", folder);
  }

  private static void assertRefused(String why, String option, Object value) {
    CommandRun run = CommandRun.of("accuracy", option, value);

    assertThat(run.code()).isEqualTo(2);
    assertThat(run.err()).contains(why).hasLineCount(1);
    assertThat(run.out()).isEmpty();
  }
}
