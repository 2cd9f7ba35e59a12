package org.thumbseal.archive;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;
import org.thumbseal.json.ExampleDocument;
import org.thumbseal.seal.KeyStore;
import org.thumbseal.seal.SealAnswer;
import org.thumbseal.seal.SigningKey;
import org.thumbseal.seal.TrustStore;

/** Several processes, or several parts of one, at the same result directory. */
@Timeout(120)
class SeveralWritersTest {
  @TempDir private Path folder;
  private Path results;
  private Path keyFile;
  private SigningKey key;

  @BeforeEach
  void emptyDirectory() throws Exception {
    results = Files.createDirectory(folder.resolve("results"));
    keyFile = folder.resolve("keys/k.pem");
    key = KeyStore.create(keyFile).key();
  }

  private void store(Archive archive, int number) throws ArchiveException {
    archive.store(ExampleDocument.unsealed(number), new byte[] {'#'});
  }

  private void assertWhole(int documents) throws ArchiveException {
    List<Outcome> outcomes = new ArrayList<>();
    DirectorySummary summary =
        new Verification(TrustStore.of(key.verifyingKey())).directory(results, outcomes::add);
    assertThat(outcomes)
        .allSatisfy(
            o ->
                assertThat(((Outcome.Answered) o).answer())
                    .as(o.toString())
                    .isEqualTo(SealAnswer.TRUSTED_KEY));
    assertThat(summary.documents()).isEqualTo(documents);
  }

  @Test
  void byTurns() throws Exception {
    try (Archive one = Archive.openForDaemon(results, Sealer.alone(key));
        Archive two = Archive.open(results, key)) {
      store(one, 1);
      store(two, 2);
      store(one, 3);
      store(one, 4);
      store(two, 5);
      assertThat(one.notes()).isEmpty();
      assertThat(two.notes()).isEmpty();
    }
    assertWhole(5);
  }

  @Test
  void whatTheOtherHasStoredIsNotStoredAgain() throws Exception {
    try (Archive one = Archive.open(results, key);
        Archive two = Archive.open(results, key)) {
      store(one, 1);
      store(two, 2);
      assertThat(one.store(ExampleDocument.unsealed(2), new byte[] {'#'}).added()).isFalse();
    }
    assertWhole(2);
  }

  /** Each of the three has to take up the ends that the others left, some dozens of times. */
  @Test
  void threeProcessesAtTheSameTime() throws Exception {
    try (OtherProcess one = OtherProcess.start(results, "store", 101, 140, keyFile);
        OtherProcess two = OtherProcess.start(results, "store", 201, 240, keyFile);
        Archive here = Archive.openForDaemon(results, Sealer.alone(key))) {
      assertThat(one.line()).isEqualTo("open");
      assertThat(two.line()).isEqualTo("open");
      for (int i = 1; i <= 40; i++) {
        store(here, i);
      }
      assertThat(one.awaitEnd()).isZero();
      assertThat(two.awaitEnd()).isZero();
      assertThat(here.notes()).isEmpty();
    }
    assertWhole(120);
  }

  @Test
  void aDocumentThatAnotherWroteWithoutItsHeadIsTakenUp() throws Exception {
    try (Archive here = Archive.open(results, key)) {
      store(here, 1);
      byte[] head = Files.readAllBytes(results.resolve("head.json"));
      try (Archive other = Archive.open(results, key)) {
        store(other, 2);
      }
      Files.write(results.resolve("head.json"), head);
      Files.writeString(
          results.resolve(".lock"),
          new LockHolder(4711, Instant.parse("2026-03-02T07:15:00Z")).line());
      List<String> told = new ArrayList<>();
      here.tellNotes(told::add);

      store(here, 3);

      assertThat(told)
          .isEqualTo(here.notes())
          .hasSize(2)
          .first()
          .isEqualTo(
              "a write (process 4711, since 2026-03-02T07:15:00Z) was cut short; looking for what"
                  + " it left");
    }
    assertWhole(3);
  }

  /** Ours did not fit; then another was cut short, and its mark must not be taken for ours. */
  @Test
  void aWriteThatFailedHereDoesNotHideOneThatWasCutShortElsewhere() throws Exception {
    try (Archive here = Archive.open(results, key)) {
      store(here, 1);
      Path inTheWay = Files.createDirectories(results.resolve(temporaryOf(2)).resolve("x"));
      assertThatThrownBy(() -> store(here, 2)).isInstanceOf(ArchiveException.class);
      Files.delete(inTheWay);
      Files.delete(inTheWay.getParent());
      byte[] head = Files.readAllBytes(results.resolve("head.json"));
      try (Archive other = Archive.open(results, key)) {
        store(other, 3);
      }
      Files.write(results.resolve("head.json"), head);
      Files.writeString(
          results.resolve(".lock"),
          new LockHolder(4711, Instant.parse("2026-03-02T07:15:00Z")).line());

      store(here, 2);
    }
    assertWhole(3);
  }

  private static String temporaryOf(int number) {
    ResultName name = ResultName.of(ExampleDocument.unsealed(number));
    String stem = name.withIdDigits(Placement.FEWEST_ID_DIGITS);
    return name.folder() + "/." + stem + ResultName.DOCUMENT + ".tmp";
  }

  @Test
  void aHeadThatGoesAwayIsNotBegunAnew() throws Exception {
    try (Archive archive = Archive.open(results, key)) {
      store(archive, 1);
      store(archive, 2);
      Path head = Files.move(results.resolve("head.json"), folder.resolve("away.json"));

      assertThatThrownBy(() -> store(archive, 3))
          .isInstanceOf(ArchiveException.class)
          .hasMessageContaining("head.json: is gone; put it back");

      Files.move(head, results.resolve("head.json"));
      store(archive, 3);
    }
    assertWhole(3);
  }

  @Test
  void aWriterThatHoldsOnIsNamed() throws Exception {
    try (OtherProcess other = OtherProcess.start(results, "write")) {
      assertThat(other.line()).isEqualTo("has it");
      assertThatThrownBy(() -> DirectoryLock.take(results, Duration.ZERO))
          .isInstanceOf(ArchiveException.class)
          .hasMessageMatching(
              "another thumbseal \\(process "
                  + other.pid()
                  + ", since 20[0-9T:-]+Z\\) keeps \\Q"
                  + results
                  + "\\E locked; try again when it has finished its write, or stop it");
      other.kill();

      try (Archive archive = Archive.open(results, key)) {
        assertThat(archive.notes())
            .singleElement()
            .asString()
            .startsWith("a write (process " + other.pid() + ", since ")
            .endsWith(") was cut short; looking for what it left");
      }
    }
    assertThat(Files.size(results.resolve(".lock"))).isZero();
  }

  @Test
  void oneDaemonOnlyAndOthersAllTheSame() throws Exception {
    try (OtherProcess daemon = OtherProcess.start(results, "watch")) {
      assertThat(daemon.line()).isEqualTo("has it");
      assertThatThrownBy(() -> Archive.openForDaemon(results, Sealer.alone(key)))
          .isInstanceOf(ArchiveException.class)
          .hasMessageMatching(
              "another watch \\(process "
                  + daemon.pid()
                  + ", since 20[0-9T:-]+Z\\) is using \\Q"
                  + results
                  + "\\E; stop it, or choose another --results directory");
      try (Archive archive = Archive.open(results, key)) {
        store(archive, 1);
        assertThat(archive.notes()).isEmpty();
      }
      daemon.kill();

      try (Archive next = Archive.openForDaemon(results, Sealer.alone(key))) {
        assertThat(next.notes())
            .singleElement()
            .asString()
            .startsWith("the last watch here (process " + daemon.pid() + ", since ")
            .endsWith(") did not end in order; looking for what it left");
        store(next, 2);
      }
    }
    try (Archive after = Archive.openForDaemon(results, Sealer.alone(key))) {
      assertThat(after.notes()).isEmpty();
    }
    assertWhole(2);
  }

  @Test
  void aSecondDaemonOfThisProcessLeavesTheLockOfTheFirst() throws Exception {
    Path link = Files.createSymbolicLink(folder.resolve("link"), results);
    try (Archive first = Archive.openForDaemon(results, Sealer.alone(key))) {
      assertThatThrownBy(() -> Archive.openForDaemon(link, Sealer.alone(key)))
          .hasMessageContaining("process " + ProcessHandle.current().pid());
      try (OtherProcess other = OtherProcess.start(results, "watch")) {
        assertThat(other.awaitEnd()).isNotZero();
      }
      store(first, 1);
    }
  }

  /** A watch that is told to stop closes once for that, and once on its way out. */
  @Test
  void closedTwice() throws Exception {
    DaemonLock first = DaemonLock.take(results, LockHolder.here());
    first.close();
    DaemonLock second = DaemonLock.take(results, LockHolder.here());
    first.close();
    assertThatThrownBy(() -> DaemonLock.take(results, LockHolder.here()))
        .isInstanceOf(ArchiveException.class);
    second.close();
  }

  /** "No locks available" is what Linux says where the server of a share keeps none (ENOLCK). */
  @Test
  void aDiskWithoutLocks() {
    LockFile.Attempt refused =
        () -> {
          throw new IOException("No locks available");
        };
    assertThatThrownBy(() -> LockFile.tryLock(Path.of("share"), refused))
        .isInstanceOf(ArchiveException.class)
        .hasMessage(
            "share: files cannot be locked there (No locks available); choose a --results directory"
                + " on another disk");
  }

  @Test
  void aLockFileMayHoldAnything() throws Exception {
    for (String content : new String[] {"w\n", "9".repeat(5000), "1 2026-99-99T99:99:99Z", "\0"}) {
      Files.writeString(results.resolve(".watch-lock"), content);
      Files.writeString(results.resolve(".lock"), content);
      try (Archive archive = Archive.openForDaemon(results, Sealer.alone(key))) {
        assertThat(archive.notes())
            .containsExactly(
                "the last watch here did not end in order; looking for what it left",
                "a write was cut short; looking for what it left");
      }
    }
  }
}
