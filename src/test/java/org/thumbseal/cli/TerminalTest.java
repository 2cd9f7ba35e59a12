package org.thumbseal.cli;

import static org.assertj.core.api.Assertions.assertThat;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import java.io.OutputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.List;
import java.util.stream.Collectors;
import org.awaitility.Awaitility;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.condition.EnabledOnOs;
import org.junit.jupiter.api.condition.OS;
import org.junit.jupiter.api.io.TempDir;
import org.thumbseal.seal.KeyStore;

/** The program on a real pseudo-terminal, as util-linux's script gives it one. */
@EnabledOnOs(value = OS.LINUX, disabledReason = "skipped: script is another program elsewhere")
class TerminalTest {
  private static final Duration PATIENCE = Duration.ofMinutes(2);

  @TempDir private Path folder;

  /** Runs it, and types each answer when its question stands there; what the screen showed. */
  private String typed(int code, List<String> questionsAndAnswers, Object... args)
      throws Exception {
    assumeTrue(Files.isExecutable(Path.of("/usr/bin/script")), "skipped: script is not installed");
    Path screen = Files.createTempFile(folder, "screen", ".txt");
    String command =
        ProgramProcess.command(args).stream()
            .map(word -> "'" + word + "'")
            .collect(Collectors.joining(" "));
    Process process =
        new ProcessBuilder("/usr/bin/script", "-qec", command, "/dev/null")
            .redirectErrorStream(true)
            .redirectOutput(screen.toFile())
            .start();
    try (OutputStream keyboard = process.getOutputStream()) {
      for (int i = 0; i < questionsAndAnswers.size(); i += 2) {
        String question = questionsAndAnswers.get(i);
        Awaitility.await()
            .atMost(PATIENCE)
            .until(() -> Files.readString(screen).contains(question) || !process.isAlive());
        keyboard.write((questionsAndAnswers.get(i + 1) + "\n").getBytes(StandardCharsets.UTF_8));
        keyboard.flush();
      }
      Awaitility.await().atMost(PATIENCE).until(() -> !process.isAlive());
    } finally {
      process.destroyForcibly();
    }
    String shown = Files.readString(screen);
    assertThat(process.exitValue()).as(shown).isEqualTo(code);
    return shown;
  }

  @Test
  void aPassphraseIsAskedForAndNotShown() throws Exception {
    Path key = folder.resolve("keys/k.pem");
    String made =
        typed(
            0,
            List.of(
                "passphrase for the new key: ", "tall trees",
                "the same once more: ", "tall trees"),
            "key",
            "new",
            "--passphrase",
            "--key",
            key);
    assertThat(made).contains("fingerprint").doesNotContain("tall trees");
    assertThat(KeyStore.isEncrypted(key)).isTrue();

    Path capture = folder.resolve("sound.log");
    CommandRun.of("simulate", "sound", "--rate", "20", "--out", capture);
    Object[] replay = {"replay", capture, "--results", folder.resolve("results"), "--key", key};
    String question = "passphrase of " + key + ": ";
    assertThat(typed(0, List.of(question, "tall trees"), replay))
        .contains("PASS")
        .doesNotContain("tall trees");
    assertThat(typed(2, List.of(question, "tall tree"), replay))
        .contains("the passphrase is wrong")
        .doesNotContain("tall tree");
  }
}
