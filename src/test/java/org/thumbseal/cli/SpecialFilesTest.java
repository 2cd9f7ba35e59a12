package org.thumbseal.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.BufferedOutputStream;
import java.io.IOException;
import java.io.OutputStream;
import java.io.RandomAccessFile;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.PosixFilePermissions;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.condition.EnabledOnOs;
import org.junit.jupiter.api.condition.OS;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.thumbseal.fuzz.Said;

/** What is no file at all, or far too large a one: refused in one line, without waiting for it. */
@EnabledOnOs(OS.LINUX)
@Timeout(value = 120, threadMode = Timeout.ThreadMode.SEPARATE_THREAD)
class SpecialFilesTest {
  private static final String[] READERS = {
    "verify @",
    "verify --trust @ @",
    "replay @",
    "replay --columns time=1:s,pressure=2:kPa @",
    "criteria @",
    "replay --criteria @ x.log",
    "replay --against @ x.log",
    "key show --key @",
    "replay --results R --key @ x.log"
  };

  @TempDir private Path folder;
  private Path key;

  @BeforeEach
  void privateFolder() throws IOException {
    Files.setPosixFilePermissions(folder, PosixFilePermissions.fromString("rwx------"));
    key = folder.resolve("special");
  }

  private void assertRefused(Path file) {
    for (String reader : READERS) {
      String line = reader.replace("R", folder.resolve("results").toString());
      CommandRun run = CommandRun.of((Object[]) line.replace("@", file.toString()).split(" "));
      assertThat(run.code()).as(line + run.err()).isIn(2, 3);
      assertThat(run.err().lines())
          .as(line)
          .isNotEmpty()
          .allMatch(l -> l.startsWith("thumbseal: "));
      Said.requireNoTrace(run.err());
    }
  }

  @Test
  void aPipeThatNobodyWritesTo() throws Exception {
    Process made = new ProcessBuilder("mkfifo", "-m", "600", key.toString()).start();
    assertThat(made.waitFor()).isZero();

    assertRefused(key);
  }

  @ParameterizedTest
  @ValueSource(strings = {"/dev/zero", "/dev/full", "/dev/null", "/proc/self/mem", "/proc/self/fd"})
  void devices(String path) {
    assertRefused(Path.of(path));
  }

  @Test
  void aFileOfTwoGigabytes() throws Exception {
    write("{\"a\":\"", 2L << 30);

    assertRefused(key);
  }

  /** Sparse: all of it but the beginning is NUL bytes that take no room on the disk. */
  private void write(String beginning, long size) throws IOException {
    try (RandomAccessFile file = new RandomAccessFile(key.toFile(), "rw")) {
      file.write(beginning.getBytes(StandardCharsets.UTF_8));
      file.setLength(size);
    }
    Files.setPosixFilePermissions(key, PosixFilePermissions.fromString("rw-------"));
  }

  @Test
  void aPipeBesideADocumentIsNotWaitedFor() throws Exception {
    Path year = Files.createDirectories(folder.resolve("results/2026"));
    for (Path pipe :
        new Path[] {
          year.resolve("a.json"), year.resolve("a.log"), folder.resolve("results/head.json")
        }) {
      assertThat(new ProcessBuilder("mkfifo", pipe.toString()).start().waitFor()).isZero();
    }

    CommandRun run = CommandRun.of("verify", folder.resolve("results"));

    assertThat(run.code()).isEqualTo(2);
    Said.requireNoTrace(run.err());
  }

  @Test
  void aCaptureOfOneEndlessLine() throws Exception {
    write("# thumbseal capture 1\n# started 2026-03-02T07:15:00Z\n0.000000 ", 100L << 20);

    assertOneLine(CommandRun.of("replay", key), 1, "no test in it");
  }

  @Test
  void aHeaderLineOfAMegabyte() throws Exception {
    Files.writeString(
        key,
        "# thumbseal capture 1\n# started 2026-03-02T07:15:00Z\n# note "
            + "x".repeat(1 << 20)
            + "\n0.000000 x\n");

    assertOneLine(CommandRun.of("replay", key), 1, "no test in it");
  }

  @ParameterizedTest
  @ValueSource(ints = {1_000_000, 33_000_000})
  void aTableOfSoManyColumns(int columns) throws Exception {
    try (OutputStream out = new BufferedOutputStream(Files.newOutputStream(key))) {
      for (int i = 0; i < columns; i++) {
        out.write(',');
      }
    }

    assertOneLine(
        CommandRun.of("replay", "--columns", "time=1:s,pressure=2:kPa", key),
        2,
        "more than 16384 columns");
  }

  private static void assertOneLine(CommandRun run, int code, String says) {
    assertThat(run.err()).contains(says).hasLineCount(1);
    assertThat(run.code()).isEqualTo(code);
  }
}
