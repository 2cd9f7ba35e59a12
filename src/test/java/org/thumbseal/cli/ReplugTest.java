package org.thumbseal.cli;

import static org.assertj.core.api.Assertions.assertThat;
import static org.awaitility.Awaitility.await;

import java.nio.file.Path;
import java.time.Duration;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.condition.EnabledOnOs;
import org.junit.jupiter.api.condition.OS;
import org.junit.jupiter.api.io.TempDir;
import org.thumbseal.link.PtyPair;

/** A sensor that is pulled out in mid-test and put in again, before the eyes of {@code watch}. */
@Timeout(120)
@EnabledOnOs(value = OS.LINUX, disabledReason = "skipped: pseudo-terminals of socat are for Linux")
class ReplugTest {
  @TempDir private Path folder;

  @Test
  void theBrokenTestIsInvalidAndTheNextOneIsGraded() throws Exception {
    ResultFiles files = new ResultFiles(folder.resolve("results"));
    Path key = folder.resolve("keys/k.pem");
    try (PtyPair pair = PtyPair.in(folder);
        ProgramProcess watch =
            ProgramProcess.start(
                folder,
                "watch",
                "--port",
                pair.port(),
                "--page",
                "off",
                "--results",
                files.directory(),
                "--key",
                key)) {
      watch.awaitOpen(Path.of(pair.port()));
      QuickPump.speak(pair, QuickPump.BLOCKED + 0.8);
      pair.unplug();
      await().atMost(Duration.ofSeconds(20)).until(() -> files.documents().size() == 1);

      pair.plugIn();
      long plugged = System.nanoTime();
      watch.awaitOpen(Path.of(pair.port()));
      System.out.println(
          "plugged in to open again: " + (System.nanoTime() - plugged) / 1_000_000 + " ms");
      QuickPump.speak(pair, Double.POSITIVE_INFINITY);
      await().atMost(Duration.ofSeconds(20)).until(() -> files.documents().size() == 2);

      watch.signal("TERM");
      assertThat(watch.awaitEnd()).isZero();
      assertThat(watch.err().lines().map(l -> l.replaceFirst(".*(near|health): ", "")).skip(1))
          .containsExactly(
              "a sensor is speaking",
              "lost (unplugged or switched off); waiting for it",
              "a sensor is speaking",
              watch.err().replaceFirst("(?s).*health: (2 tests graded, 2 stored, .*)\n", "$1"));
    }
    List<Path> documents = files.documents();
    assertThat(ResultFiles.verdict(documents.get(0))).isEqualTo("invalid");
    assertThat(ResultFiles.reasons(documents.get(0))).contains("gap-in-test");
    assertThat(ResultFiles.verdict(documents.get(1))).isEqualTo("pass");
    assertThat(CommandRun.of("verify", "--key", key, files.directory()).code()).isZero();
  }
}
