package org.thumbseal.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;

/** What a newcomer runs first; ten times as fast as life, a run takes about 11 s. */
@Timeout(120)
class DemoCommandTest {
  @TempDir private Path folder;

  @Test
  void twoSealedResultsACurveAndTheLineThatVerifies() throws Exception {
    CommandRun run = CommandRun.of("demo", "-o", folder.resolve("demo"));
    assertThat(run.err()).isEmpty();
    assertThat(run.code()).isZero();
    assertThat(run.out().lines())
        .anyMatch(l -> l.startsWith("PASS  WARD-3-PUMP-1"))
        .anyMatch(l -> l.startsWith("FAIL  WARD-3-PUMP-2"))
        .anyMatch(l -> l.endsWith("-- +65.0 kPa within 10 s"))
        .anyMatch(l -> l.endsWith("s since the inlet was blocked"))
        .noneMatch(l -> l.contains("clock-unsteady"));
    assertThat(run.out()).contains("with a key made for this demo alone, not yours: " + folder);

    assertThat(verdicts()).containsExactly("pass", "fail");
    CommandRun verify = CommandRun.of((Object[]) advised(run, "The seals verify with:"));
    assertThat(verify.code()).isZero();
    assertThat(verify.out()).contains("2 documents and 2 captures in 1 chain checked: nothing");
    CommandRun replay = CommandRun.of((Object[]) advised(run, "Grade one again with:"));
    assertThat(replay.code()).isEqualTo(1);
    assertThat(replay.out()).startsWith("FAIL  WARD-3-PUMP-2");

    CommandRun again = CommandRun.of("demo", "-o", folder.resolve("demo"));
    assertThat(again.code()).isZero();
    assertThat(verdicts()).containsExactly("pass", "fail", "pass", "fail");
    assertThat(CommandRun.of((Object[]) advised(again, "The seals verify with:")).code()).isZero();
  }

  private List<String> verdicts() throws Exception {
    List<String> verdicts = new java.util.ArrayList<>();
    for (Path document : new ResultFiles(folder.resolve("demo/results")).documents()) {
      verdicts.add(ResultFiles.verdict(document));
    }
    return verdicts;
  }

  /** The arguments of the command that stands behind some words, without the way to call it. */
  private static String[] advised(CommandRun run, String words) {
    String line = run.out().lines().filter(l -> l.startsWith(words)).findFirst().orElseThrow();
    String command = line.replaceFirst(".*?(-Dexec.args=\"|\\.jar )", "").replaceFirst("\"$", "");
    return command.split(" ");
  }

  @Test
  void aPlaceThatCannotBeWrittenIsOneLineAndNothingElse() throws Exception {
    Path file = Files.createFile(folder.resolve("file"));
    assertThat(CommandRun.of("demo", "--output", file.resolve("demo")))
        .isEqualTo(
            new CommandRun(
                3,
                "",
                "thumbseal: "
                    + file.resolve("demo")
                    + " cannot be written: Not a directory; name another place with -o DIR\n"));
  }
}
