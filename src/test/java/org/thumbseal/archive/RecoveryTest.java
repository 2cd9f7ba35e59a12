package org.thumbseal.archive;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.io.InputStream;
import java.io.SequenceInputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.thumbseal.json.ExampleDocument;
import org.thumbseal.json.JsonGate;
import org.thumbseal.seal.SealAnswer;
import org.thumbseal.seal.SigningKey;
import org.thumbseal.seal.TrustStore;

/** A result directory after power cuts, full disks and accidents. */
class RecoveryTest {
  private static final byte[] CAPTURE = "# thumbseal capture 1\n".getBytes(StandardCharsets.UTF_8);
  private static final SigningKey KEY = SigningKey.generate();

  @TempDir private Path folder;
  private Path head;
  private TrustStore trust = TrustStore.of();

  @BeforeEach
  void twoResults() throws Exception {
    head = folder.resolve("head.json");
    store(KEY, 1);
    store(KEY, 2);
  }

  private List<String> store(SigningKey key, int number) throws Exception {
    try (Archive archive = Archive.open(folder, new Sealer(key, trust))) {
      archive.store(ExampleDocument.unsealed(number), CAPTURE);
      return archive.notes();
    }
  }

  @Test
  void aHeadThatMissesTheLastDocumentsIsRolledForward() throws Exception {
    byte[] old = Files.readAllBytes(head);
    store(KEY, 3);
    store(KEY, 4);
    byte[] current = Files.readAllBytes(head);
    Files.write(head, old);

    List<String> notes = openAndClose();

    assertThat(notes)
        .hasSize(2)
        .allSatisfy(n -> assertThat(n).startsWith("head.json now names 2026/2026"));
    assertThat(Files.readAllBytes(head)).isEqualTo(current);
    assertWhole(4);
  }

  @Test
  void theFirstDocumentOfAllCanBeTheOneThatWasCutShort() throws Exception {
    Path fresh = folder.resolve("fresh");
    try (Archive archive = Archive.open(fresh, KEY)) {
      archive.store(ExampleDocument.unsealed(1), CAPTURE);
    }
    Files.delete(fresh.resolve("head.json"));
    String mark = new LockHolder(4711, Instant.parse("2026-03-02T07:15:00Z")).line();
    Files.writeString(fresh.resolve(".lock"), mark);

    try (Archive archive = Archive.open(fresh, KEY)) {
      assertThat(archive.notes()).hasSize(2);
    }
    assertThat(fresh.resolve("head.json")).exists();
  }

  @Test
  void aWriteThatWasUnderWayIsLookedForEvenIfTheNumberFits() throws Exception {
    byte[] old = Files.readAllBytes(head);
    store(KEY, 3);
    Files.write(head, old);
    Files.delete(documents().get(0));
    Files.writeString(folder.resolve(".lock"), "w\n");

    assertThat(openAndClose())
        .hasSize(2)
        .first()
        .isEqualTo("a write was cut short; looking for what it left");
    assertThat(JsonGate.read(head).path("sequence").intValue()).isEqualTo(3);
    assertThat(Files.size(folder.resolve(".lock"))).isZero();
  }

  @Test
  void temporaryFilesAreRemovedAndSaid() throws Exception {
    Files.writeString(folder.resolve(".head.json.tmp"), "{");
    Files.writeString(folder.resolve("2026/.20260302T071507Z_SP-014_pass_0.json.tmp"), "{");

    assertThat(openAndClose())
        .containsExactlyInAnyOrder(
            "removed the unfinished .head.json.tmp",
            "removed the unfinished 2026/.20260302T071507Z_SP-014_pass_0.json.tmp");
    assertWhole(2);
  }

  @Test
  void aCaptureWithoutItsDocumentIsTakenUpAgain() throws Exception {
    String name = Archive.captureName(ExampleDocument.unsealed(3));
    Files.write(folder.resolve("2026").resolve(name), CAPTURE);

    store(KEY, 3);

    assertThat(folder.resolve("2026").resolve(name.replace(".log", ".json"))).exists();
    assertWhole(3);
  }

  @Test
  void anotherCaptureOfThatNameIsLeftAlone() throws Exception {
    String name = Archive.captureName(ExampleDocument.unsealed(3));
    Path strange = Files.writeString(folder.resolve("2026").resolve(name), "something else");

    store(KEY, 3);

    assertThat(strange).hasContent("something else");
    assertWhole(3);
  }

  @Test
  void aMissingHeadIsNotMadeUp() throws Exception {
    Files.delete(head);

    assertThatThrownBy(this::openAndClose)
        .isInstanceOf(ArchiveException.class)
        .hasMessageContaining("knows nothing of 2 sealed documents");
    assertThat(head).doesNotExist();
  }

  @Test
  void aDamagedHeadIsNotTrusted() throws Exception {
    Files.writeString(head, Files.readString(head).replace("\"sequence\":2", "\"sequence\":1"));

    assertThatThrownBy(this::openAndClose)
        .isInstanceOf(ArchiveException.class)
        .hasMessageContaining("its seal is broken");
  }

  @Test
  void aSingleDocumentWithoutAHeadIsNoBeginningUnlessAWriteWasCutShort() throws Exception {
    Files.delete(head);
    Files.delete(documents().get(1));

    assertThatThrownBy(this::openAndClose).hasMessageContaining("knows nothing of 1");
  }

  /** It could name fewer documents than there were, and the next one of ours would vouch for it. */
  @Test
  void aStrangersHeadIsNotBuiltOn() throws Exception {
    SigningKey stranger = SigningKey.generate();
    Path elsewhere = folder.resolve("elsewhere");
    try (Archive archive = Archive.open(elsewhere, stranger)) {
      archive.store(ExampleDocument.unsealed(9), CAPTURE);
    }
    Files.copy(
        elsewhere.resolve("head.json"), head, java.nio.file.StandardCopyOption.REPLACE_EXISTING);

    assertThatThrownBy(this::openAndClose)
        .hasMessageContaining("head.json is sealed by an unknown key (")
        .hasMessageContaining(stranger.verifyingKey().fingerprint());
  }

  @Test
  void aNewKeyCarriesTheOldChainOn() throws Exception {
    SigningKey next = SigningKey.generate();
    trust = TrustStore.of(KEY.verifyingKey(), next.verifyingKey());
    store(next, 3);
    store(KEY, 4);
    store(next, 5);

    List<Outcome> outcomes = new ArrayList<>();
    DirectorySummary summary = new Verification(trust).directory(folder, outcomes::add);

    assertThat(summary.chains()).hasSize(2);
    assertThat(outcomes).hasSize(5).allSatisfy(RecoveryTest::assertTrusted);
  }

  @Test
  void aCaptureThatCannotBeReadLeavesNothing() throws Exception {
    try (Archive archive = Archive.open(folder, KEY)) {
      assertThatThrownBy(
              () -> archive.store(ExampleDocument.unsealed(3), RecoveryTest::breaksHalfWay))
          .isInstanceOf(ArchiveException.class)
          .hasMessageContaining("the cable was pulled");
      archive.store(ExampleDocument.unsealed(4), CAPTURE);
    }
    assertWhole(3);
    assertThat(openAndClose()).isEmpty();
  }

  private static InputStream breaksHalfWay() {
    InputStream broken =
        new InputStream() {
          @Override
          public int read() throws IOException {
            throw new IOException("the cable was pulled");
          }

          @Override
          public int read(byte[] bytes, int offset, int length) throws IOException {
            return read();
          }
        };
    return new SequenceInputStream(new ByteArrayInputStream(new byte[100]), broken);
  }

  @Test
  void whereNothingCanBeWritten() throws Exception {
    Path file = Files.writeString(folder.resolve("file"), "");
    assertThatThrownBy(() -> Archive.open(file, KEY))
        .isInstanceOf(ArchiveException.class)
        .hasMessageContaining("a directory is needed here");

    Path proc = Path.of("/proc");
    assumeTrue(Files.isDirectory(proc), "no /proc here to be refused by");
    assertThatThrownBy(() -> Archive.open(proc.resolve("thumbseal"), KEY))
        .isInstanceOf(ArchiveException.class);
  }

  private List<String> openAndClose() throws ArchiveException {
    try (Archive archive = Archive.open(folder, KEY)) {
      return archive.notes();
    }
  }

  private List<Path> documents() throws IOException {
    List<Path> files = new ArrayList<>();
    new ResultDirectory(folder).forEachDocument(files::add);
    files.sort(null);
    return files;
  }

  private void assertWhole(int documents) throws ArchiveException {
    List<Outcome> outcomes = new ArrayList<>();
    new Verification(TrustStore.of(KEY.verifyingKey())).directory(folder, outcomes::add);
    outcomes.removeIf(Outcome.Remarked.class::isInstance);
    assertThat(outcomes).hasSize(documents).allSatisfy(RecoveryTest::assertTrusted);
  }

  private static void assertTrusted(Outcome outcome) {
    assertThat(outcome).isInstanceOf(Outcome.Answered.class);
    assertThat(((Outcome.Answered) outcome).answer())
        .as(outcome.toString())
        .isEqualTo(SealAnswer.TRUSTED_KEY);
  }
}
