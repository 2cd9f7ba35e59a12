package org.thumbseal.cli;

import static org.assertj.core.api.Assertions.assertThat;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Year;
import java.time.ZoneOffset;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.condition.EnabledOnOs;
import org.junit.jupiter.api.condition.OS;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.thumbseal.link.PtyPair;

/** {@code watch} as a process that is told to stop. */
@Timeout(120)
@EnabledOnOs(value = OS.LINUX, disabledReason = "skipped: signals are sent as on Linux")
class StopTest {
  private static final String CLIMBING = ": rise ";

  @TempDir private Path folder;

  private Path key() {
    return folder.resolve("keys/k.pem");
  }

  private ResultFiles results() {
    return new ResultFiles(folder.resolve("results"));
  }

  private ProgramProcess watch(String... ports) throws IOException {
    Object[] args = new Object[5 + 2 * ports.length];
    System.arraycopy(
        new Object[] {"watch", "--results", results().directory(), "--key", key()}, 0, args, 0, 5);
    for (int i = 0; i < ports.length; i++) {
      args[5 + 2 * i] = "--port";
      args[6 + 2 * i] = ports[i];
    }
    return ProgramProcess.start(folder, args);
  }

  /** Ctrl-C is INT. A shell lets what it starts in the background ignore that, and so do we. */
  @ParameterizedTest
  @ValueSource(strings = {"TERM", "INT"})
  void aTestInHandIsWrittenAndAllIsLetGo(String signal) throws Exception {
    assumeTrue(!signal.equals("INT") || !isIgnored(2), "skipped: started with INT ignored");
    try (ProgramProcess watch = watch("sim:sound,speed=2")) {
      watch.awaitOut(CLIMBING);
      long told = System.nanoTime();
      watch.signal(signal);
      assertThat(watch.awaitEnd()).isZero();
      System.out.println(signal + " to end: " + (System.nanoTime() - told) / 1_000_000 + " ms");
      assertThat(watch.out()).contains("INVALID unassigned", "gap-in-test");
      assertThat(watch.err())
          .contains("thumbseal: health: 1 test graded, 1 stored, 0 waiting, 0 lost; ")
          .doesNotContain("lost (", "at org.");
    }
    assertInvalidAndWhole();
  }

  @Test
  void theSerialLibraryClosingItsPortOnTheWayOutChangesNothing() throws Exception {
    try (PtyPair pair = PtyPair.in(folder);
        ProgramProcess watch = watch(pair.port())) {
      watch.awaitOpen(Path.of(pair.port()));
      QuickPump.speak(pair, QuickPump.BLOCKED + 0.8);
      watch.awaitOut(CLIMBING);
      watch.signal("TERM");
      assertThat(watch.awaitEnd()).isZero();
      assertThat(watch.err()).doesNotContain("lost (");
    }
    assertInvalidAndWhole();
  }

  private void assertInvalidAndWhole() throws Exception {
    assertThat(results().documents()).hasSize(1);
    Path document = results().documents().get(0);
    assertThat(ResultFiles.verdict(document)).isEqualTo("invalid");
    assertThat(ResultFiles.reasons(document)).contains("gap-in-test");
    assertThat(results().files("").stream().filter(Files::isRegularFile).map(Path::getFileName))
        .map(Path::toString)
        .containsExactlyInAnyOrder(
            ".lock",
            ".watch-lock",
            "head.json",
            document.getFileName().toString(),
            ResultFiles.capture(document).getFileName().toString());
    assertThat(CommandRun.of("verify", "--key", key(), results().directory()).code()).isZero();
    // The lock is free: another one may write.
    CommandRun next =
        CommandRun.of(
            "replay",
            "--results",
            results().directory(),
            "--key",
            key(),
            ResultFiles.capture(document));
    assertThat(next.err()).startsWith("thumbseal: this test is stored already");
  }

  /** Whether this process, and so its children, ignores a signal (proc(5), SigIgn). */
  private static boolean isIgnored(int signal) throws IOException {
    String mask =
        Files.readAllLines(Path.of("/proc/self/status")).stream()
            .filter(line -> line.startsWith("SigIgn:"))
            .findFirst()
            .orElse("SigIgn: 0");
    long bits = Long.parseUnsignedLong(mask.substring(mask.indexOf(':') + 1).strip(), 16);
    return (bits >> (signal - 1) & 1) == 1;
  }

  @Test
  void oneBadPortDoesNotStopTheOthersAndASecondWatchIsRefused() throws Exception {
    String missing = folder.resolve("ttyNone").toString();
    try (ProgramProcess watch = watch(missing, "sim:sound,speed=10")) {
      watch.awaitOut(": PASS ");
      CommandRun second =
          CommandRun.of(
              "watch", "--port", "sim:sound", "--results", results().directory(), "--key", key());
      assertThat(second.code()).isEqualTo(3);
      assertThat(second.out()).isEmpty();
      assertThat(second.err())
          .matches(
              "thumbseal: another watch \\(process [0-9]+, since 20[0-9T:-]+Z\\) is using \\Q"
                  + results().directory()
                  + "\\E; stop it, or choose another --results directory\n");
      watch.signal("TERM");
      assertThat(watch.awaitEnd()).isZero();
      assertThat(watch.err().lines().filter(l -> l.contains(missing)))
          .singleElement()
          .asString()
          .startsWith("thumbseal: " + missing + ": no such port")
          .endsWith("; waiting for it");
    }
    assertThat(results().documents()).hasSize(1);
  }

  /** The folder of the year cannot be made, for a file is in its place. */
  @Test
  void aResultThatCouldNotBeWrittenIsToldAtTheEndAndIsNoGoodExit() throws Exception {
    int year = Year.now(ZoneOffset.UTC).getValue();
    Files.createDirectories(results().directory());
    for (int each : new int[] {year, year + 1}) {
      Files.createFile(results().directory().resolve(each + ""));
    }
    try (ProgramProcess watch = watch("sim:sound,speed=20", "sim:idle")) {
      watch.awaitOut(": release ");
      watch.awaitErr("kept in memory");
      watch.signal("TERM");
      assertThat(watch.awaitEnd()).isEqualTo(3);
      assertThat(watch.err())
          .contains(
              "a result was not stored, but safe in " + results().directory().resolve("open"),
              "thumbseal: health: 1 test graded, 0 stored, 1 waiting, 0 lost; ",
              "; disk refuses since ");
    }
    for (int each : new int[] {year, year + 1}) {
      Files.delete(results().directory().resolve(each + ""));
    }
    try (ProgramProcess next = watch("sim:never-blocked,speed=20")) {
      assertThat(next.awaitEnd()).isZero();
      assertThat(next.out()).contains("sim:sound,speed=20: PASS ");
      assertThat(next.err()).contains("interrupted, and taken up: its test is stored");
    }
    assertThat(results().documents()).hasSize(1);
    assertThat(results().directory().resolve("open")).doesNotExist();
  }
}
