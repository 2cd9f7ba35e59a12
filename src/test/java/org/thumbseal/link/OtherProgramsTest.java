package org.thumbseal.link;

import static org.assertj.core.api.Assertions.assertThat;
import static org.awaitility.Awaitility.await;

import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.Optional;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.condition.DisabledOnOs;
import org.junit.jupiter.api.condition.EnabledOnOs;
import org.junit.jupiter.api.condition.OS;
import org.junit.jupiter.api.io.TempDir;

/** Who has a device open, told from a folder laid out as proc(5) says. */
@DisabledOnOs(value = OS.WINDOWS, disabledReason = "skipped: symbolic links need a right there")
class OtherProgramsTest {
  private static final long SELF = 40;

  @TempDir Path folder;
  private Path proc;
  private Path device;

  @BeforeEach
  void layOut() throws Exception {
    proc = Files.createDirectory(folder.resolve("proc"));
    Files.createDirectory(proc.resolve("net"));
    device = Files.createFile(folder.toRealPath().resolve("ttyUSB0"));
    process(SELF, "java").open(device);
  }

  private record Running(Path fd) {
    void open(Path file) throws Exception {
      long before;
      try (var files = Files.list(fd)) {
        before = files.count();
      }
      Files.createSymbolicLink(fd.resolve(Long.toString(before)), file);
    }
  }

  private Running process(long pid, String name) throws Exception {
    Path process = Files.createDirectory(proc.resolve(Long.toString(pid)));
    Files.writeString(process.resolve("comm"), name + "\n");
    return new Running(Files.createDirectory(process.resolve("fd")));
  }

  private OtherPrograms programs() {
    return new OtherPrograms(proc, SELF);
  }

  @Test
  void thisProgramIsNoOther() {
    assertThat(programs().having(device)).isEmpty();
  }

  @Test
  void anotherIsNamedThoughItKnowsTheDeviceByAnotherName() throws Exception {
    Running cat = process(123, "cat");
    cat.open(Path.of("/dev/null"));
    cat.open(device);
    Path byId = Files.createSymbolicLink(folder.resolve("by-id"), device);
    assertThat(programs().having(byId)).contains("pid 123 (cat)");
  }

  @Test
  void oneThatHasSomethingElseOpenIsNot() throws Exception {
    process(123, "cat").open(folder.resolve("ttyUSB1"));
    process(124, "socket").open(Path.of("socket:[4711]"));
    assertThat(programs().having(device)).isEmpty();
  }

  @Test
  void oneThatHasJustEndedDoesNotHideTheNext() throws Exception {
    Files.createDirectory(proc.resolve("122"));
    process(123, "cat").open(device);
    assertThat(programs().having(device)).contains("pid 123 (cat)");
  }

  @Test
  void allAreNamed() throws Exception {
    process(123, "cat").open(device);
    process(124, "screen").open(device);
    assertThat(programs().having(device).orElseThrow().split(", ", -1))
        .containsExactlyInAnyOrder("pid 123 (cat)", "pid 124 (screen)");
  }

  @Test
  void aNameCannotSpoilTheLine() throws Exception {
    process(123, "a\u001b[2J\nb c").open(device);
    assertThat(programs().having(device)).contains("pid 123 (a?[2J?b c)");
  }

  @Test
  void whereNothingIsToBeSeenNothingIsSaid() {
    assertThat(new OtherPrograms(folder.resolve("none"), SELF).having(device)).isEmpty();
    assertThat(programs().having(folder.resolve("unplugged"))).isEmpty();
  }

  @Test
  @EnabledOnOs(value = OS.LINUX, disabledReason = "skipped: only Linux has /proc")
  void theSystemShowsARealProcess() throws Exception {
    Process other = new ProcessBuilder("sleep", "600").redirectInput(device.toFile()).start();
    try {
      await()
          .atMost(Duration.ofSeconds(30))
          .until(() -> OtherPrograms.system().having(device).equals(said(other)));
    } finally {
      other.destroy();
    }
  }

  private static Optional<String> said(Process other) {
    return Optional.of("pid " + other.pid() + " (sleep)");
  }
}
