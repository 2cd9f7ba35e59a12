package org.thumbseal.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.condition.EnabledOnOs;
import org.junit.jupiter.api.condition.OS;
import org.junit.jupiter.api.io.TempDir;

/** {@code watch} on a disk that is full, read-only or gone for a while. */
@Timeout(180)
@EnabledOnOs(value = OS.LINUX, disabledReason = "skipped: disks are mounted as on Linux")
class DiskTroubleTest {
  private static final String SOUND = "sim:sound,speed=4";
  private static final String IDLE = "sim:idle";
  private static final String SHOUT =
      "until then tests go on and results are kept in memory: do not stop this program";

  @TempDir private Path folder;

  private Path results() {
    return folder.resolve("disk/results");
  }

  private ProgramProcess watch() throws Exception {
    return ProgramProcess.start(
        folder, "watch", "--port", SOUND, "--port", IDLE, "--results", results(), "--key", key());
  }

  private Path key() {
    return folder.resolve("keys/k.pem");
  }

  /** A test has been stored, and all that was kept waiting is told. */
  private void assertWrittenLate(ProgramProcess watch) throws Exception {
    watch.awaitOut(": PASS ");
    watch.awaitErr("results can be written again after ");
    watch.signal("TERM");
    assertThat(watch.awaitEnd()).as(watch.err()).isZero();
    assertThat(watch.err().split(SHOUT, -1)).as(watch.err()).hasSize(2);
    assertThat(watch.err())
        .contains("; written late: 1\n", "health: 1 test graded, 1 stored, 0 waiting, 0 lost; ");
    assertThat(new ResultFiles(results()).documents()).hasSize(1);
    assertThat(new ResultFiles(results()).files(".tmp")).isEmpty();
    assertThat(results().resolve("open")).doesNotExist();
    CommandRun verify = CommandRun.of("verify", "--key", key(), results());
    assertThat(verify.code()).as(verify.out() + verify.err()).isZero();
  }

  @Test
  void aDiskThatFillsUpInMidTest() throws Exception {
    try (SmallDisk disk = SmallDisk.at(folder.resolve("disk"));
        ProgramProcess watch = watch()) {
      watch.awaitOut(SOUND + ": rise ");
      disk.fill();
      watch.awaitErr("No space left on device; make room on that disk; " + SHOUT);
      watch.awaitOut(SOUND + ": release ");
      watch.awaitErr("1 test graded, 0 stored, 1 waiting, 0 lost; ");
      assertThat(new ResultFiles(results()).documents()).isEmpty();
      disk.free();
      assertWrittenLate(watch);
    }
  }

  @Test
  void aDiskThatIsReadOnlyForAWhile() throws Exception {
    try (SmallDisk disk = SmallDisk.at(folder.resolve("disk"));
        ProgramProcess watch = watch()) {
      watch.awaitOut(SOUND + ": rise ");
      disk.lock();
      watch.awaitOut(SOUND + ": release ");
      watch.awaitErr("ead-only file system; make that disk writable again; " + SHOUT);
      watch.awaitErr("1 test graded, 0 stored, 1 waiting, 0 lost; ");
      disk.unlock();
      assertWrittenLate(watch);
    }
  }

  @Test
  void aDirectoryThatVanishesAndComesBack() throws Exception {
    try (ProgramProcess watch = watch()) {
      watch.awaitOut(SOUND + ": rise ");
      Path away = folder.resolve("disk/away");
      Files.move(results(), away);
      watch.awaitOut(SOUND + ": release ");
      watch.awaitErr("has vanished; put it back, or plug its disk in again; " + SHOUT);
      Files.move(away, results());
      assertWrittenLate(watch);
    }
  }

  /** What a stick leaves when it is pulled: the folder it was mounted on. */
  @Test
  void noSecondChainBeginsInAnEmptyFolderOfThatName() throws Exception {
    try (ProgramProcess watch = watch()) {
      watch.awaitOut(SOUND + ": rise ");
      Path away = folder.resolve("disk/away");
      Files.move(results(), away);
      Files.createDirectory(results());
      watch.awaitOut(SOUND + ": release ");
      watch.awaitErr("is not the directory that was opened; put it back, ");
      watch.awaitErr("1 test graded, 0 stored, 1 waiting, 0 lost; ");
      assertThat(results()).isEmptyDirectory();
      Files.delete(results());
      Files.move(away, results());
      watch.awaitOut(": PASS ");
      watch.signal("TERM");
      assertThat(watch.awaitEnd()).as(watch.err()).isZero();
    }
    CommandRun verify = CommandRun.of("verify", "--key", key(), results());
    assertThat(verify.code()).as(verify.out() + verify.err()).isZero();
  }

  /** The disk never comes back: the recording is saved where only its owner can read it. */
  @Test
  void atTheEndTheRecordingIsPutWhereItCanBeHadAgain() throws Exception {
    String err;
    try (ProgramProcess watch = watch()) {
      watch.awaitOut(SOUND + ": rise ");
      Files.move(results(), folder.resolve("disk/away"));
      watch.awaitOut(SOUND + ": release ");
      watch.awaitErr("1 waiting");
      watch.signal("TERM");
      assertThat(watch.awaitEnd()).isEqualTo(3);
      err = watch.err();
    }
    Path saved = Path.of(err.replaceFirst("(?s).*its recording is in (.*?): when.*", "$1"));
    assertThat(Files.getPosixFilePermissions(saved.getParent())).hasSize(3);
    Path later = folder.resolve("later");
    CommandRun replay = CommandRun.of("replay", "--results", later, "--key", key(), saved);
    assertThat(replay.code()).as(replay.err()).isZero();
    Files.delete(saved);
    Files.delete(saved.getParent());
    assertThat(CommandRun.of("verify", "--key", key(), later).code()).isZero();
  }
}
