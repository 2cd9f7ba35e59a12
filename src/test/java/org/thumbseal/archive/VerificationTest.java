package org.thumbseal.archive;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.thumbseal.json.Canonical;
import org.thumbseal.json.ExampleDocument;
import org.thumbseal.json.JsonGate;
import org.thumbseal.seal.LedgerPosition;
import org.thumbseal.seal.Seal;
import org.thumbseal.seal.SealAnswer;
import org.thumbseal.seal.SigningKey;
import org.thumbseal.seal.TrustStore;
import tools.jackson.databind.node.ObjectNode;

/** Every way in which a directory of five results can be tampered with. */
class VerificationTest {
  private static final byte[] CAPTURE = "# thumbseal capture 1\n".getBytes(StandardCharsets.UTF_8);
  private static final SigningKey KEY = SigningKey.generate();

  @TempDir private Path folder;
  private final List<Path> documents = new ArrayList<>();

  @BeforeEach
  void fiveResults() throws Exception {
    try (Archive archive = Archive.open(folder, KEY)) {
      for (int i = 1; i <= 5; i++) {
        documents.add(archive.store(ExampleDocument.unsealed(i), CAPTURE).document());
      }
    }
  }

  @Test
  void allGood() throws Exception {
    List<Outcome> outcomes = new ArrayList<>();
    DirectorySummary summary = trusting(KEY).directory(folder, outcomes::add);

    assertThat(outcomes).hasSize(5);
    assertThat(faults()).isEmpty();
    Period period =
        new Period(Instant.parse("2026-03-02T07:16:00Z"), Instant.parse("2026-03-02T07:20:00Z"));
    ChainSummary chain =
        new ChainSummary(
            KEY.verifyingKey().kid(),
            KEY.verifyingKey().fingerprint(),
            SealAnswer.TRUSTED_KEY,
            5,
            Optional.of(period));
    assertThat(summary).isEqualTo(new DirectorySummary(folder, 5, 5, 0, List.of(chain)));
    for (Path document : documents) {
      assertThat(trusting(KEY).file(document))
          .isEqualTo(
              new Outcome.Answered(
                  document, SealAnswer.TRUSTED_KEY, KEY.verifyingKey().fingerprint(), ""));
    }
  }

  @Test
  void theFolderOfAYearStandsForTheWhole() throws Exception {
    DirectorySummary summary = trusting(KEY).directory(folder.resolve("2026"), o -> {});

    assertThat(summary.directory()).isEqualTo(folder.toAbsolutePath());
  }

  @Test
  void aDirectoryBehindALink(@TempDir Path elsewhere) throws Exception {
    Path link = Files.createSymbolicLink(elsewhere.resolve("link"), folder);

    assertThat(trusting(KEY).directory(link, o -> {}).documents()).isEqualTo(5);
    try (Archive archive = Archive.open(link, KEY)) {
      assertThat(archive.notes()).isEmpty();
    }
  }

  @Test
  void anUnknownKey() throws Exception {
    List<SealAnswer> answers = new ArrayList<>();
    trusting(SigningKey.generate())
        .directory(folder, o -> answers.add(((Outcome.Answered) o).answer()));

    assertThat(answers).hasSize(6).containsOnly(SealAnswer.UNKNOWN_KEY);
    assertThat(fileAnswer(SigningKey.generate(), 2)).isEqualTo(SealAnswer.UNKNOWN_KEY);
  }

  @Test
  void aChangedDocument() throws Exception {
    Path changed = documents.get(2);
    Files.writeString(changed, Files.readString(changed).replace("88.41", "89.41"));

    assertThat(faults()).containsExactly("broken seal: the content is not what was signed");
    assertThat(fileAnswer(KEY, 2)).isEqualTo(SealAnswer.BROKEN_SEAL);
    assertThat(fileAnswer(KEY, 3)).isEqualTo(SealAnswer.BROKEN_CHAIN);
    assertThat(fileAnswer(KEY, 1)).isEqualTo(SealAnswer.TRUSTED_KEY);
  }

  @Test
  void missingDocuments() throws Exception {
    Files.delete(documents.get(1));
    Files.delete(documents.get(2));

    assertThat(faults()).containsExactly("broken chain: documents 2 to 3 are missing");
    assertThat(fileAnswer(KEY, 3)).isEqualTo(SealAnswer.BROKEN_CHAIN);
    assertThat(fileAnswer(KEY, 0)).isEqualTo(SealAnswer.BROKEN_CHAIN);
  }

  @Test
  void theBeginningCutOff() throws Exception {
    Files.delete(documents.get(0));

    assertThat(faults()).containsExactly("broken chain: document 1 is missing");
  }

  @Test
  void theEndCutOff() throws Exception {
    Files.delete(documents.get(4));
    Files.delete(documents.get(3));

    assertThat(faults())
        .containsExactly("broken chain: documents 4 to 5 are missing: the end was cut off");
    assertThat(fileAnswer(KEY, 2)).isEqualTo(SealAnswer.BROKEN_CHAIN);
  }

  @Test
  void theHeadGone() throws Exception {
    Files.delete(folder.resolve("head.json"));

    assertThat(faults())
        .containsExactly("broken chain: head.json is missing, so a cut-off end would not show");
  }

  @Test
  void theHeadChanged() throws Exception {
    Path head = folder.resolve("head.json");
    Files.writeString(head, Files.readString(head).replace("\"sequence\":5", "\"sequence\":4"));

    assertThat(faults()).containsExactly("broken seal: the content is not what was signed");
    assertThat(fileAnswer(KEY, 4)).isEqualTo(SealAnswer.BROKEN_CHAIN);
  }

  @Test
  void aDuplicate() throws Exception {
    Files.copy(documents.get(2), documents.get(2).resolveSibling("copy.json"));

    assertThat(faults()).singleElement().asString().startsWith("broken chain: is a copy of ");
  }

  @Test
  void aFork() throws Exception {
    ObjectNode second = JsonGate.read(documents.get(1));
    LedgerPosition place = new LedgerPosition(2, second.at("/ledger/previous").stringValue());
    write("fork.json", Seal.seal(withCapture(), place, KEY));

    assertThat(faults())
        .containsExactlyInAnyOrder(
            "broken chain: fork: two documents bear number 2; the chain goes on from this one",
            "broken chain: fork: two documents bear number 2;"
                + " the chain does not go on from this one");
  }

  @Test
  void anInsertedDocumentOfAStranger() throws Exception {
    write("strange.json", Seal.seal(withCapture(), LedgerPosition.FIRST, SigningKey.generate()));

    assertThat(faults()).containsExactly("broken chain: is not known to head.json");
    assertThat(trusting(KEY).file(folder.resolve("2026/strange.json")))
        .isInstanceOfSatisfying(
            Outcome.Answered.class, a -> assertThat(a.answer()).isEqualTo(SealAnswer.BROKEN_CHAIN));
  }

  @Test
  void aDocumentBeyondTheHead() throws Exception {
    ObjectNode last = JsonGate.read(documents.get(4));
    write("six.json", Seal.seal(withCapture(), new LedgerPosition(6, Seal.digest(last)), KEY));

    assertThat(faults()).containsExactly("broken chain: is not known to head.json");
  }

  /** Two documents sealed anew by someone who has the key, their places exchanged. */
  @Test
  void reorderedDocuments() throws Exception {
    ObjectNode second = JsonGate.read(documents.get(1));
    ObjectNode third = JsonGate.read(documents.get(2));
    Files.writeString(documents.get(1), Canonical.text(exchanged(second, third)) + "\n");
    Files.writeString(documents.get(2), Canonical.text(exchanged(third, second)) + "\n");

    assertThat(faults()).isNotEmpty().allMatch(f -> f.startsWith("broken chain: does not follow"));
    assertThat(fileAnswer(KEY, 1)).isEqualTo(SealAnswer.BROKEN_CHAIN);
  }

  private static ObjectNode exchanged(ObjectNode document, ObjectNode place) {
    LedgerPosition position =
        new LedgerPosition(
            place.at("/ledger/sequence").longValue(), place.at("/ledger/previous").stringValue());
    return Seal.seal(document, position, KEY);
  }

  @Test
  void anUnsealedDocument() throws Exception {
    write("plain.json", ExampleDocument.unsealed());

    assertThat(faults()).containsExactly("broken seal: there is no signature");
  }

  @Test
  void whatIsNoDocument() throws Exception {
    Files.writeString(folder.resolve("2026/x.json"), "{\"a\":1,\"a\":2}");

    assertThat(faults()).singleElement().asString().contains("Duplicate");
    assertThat(trusting(KEY).file(folder.resolve("2026/x.json")))
        .isInstanceOf(Outcome.Unreadable.class);
    assertThat(trusting(KEY).file(folder.resolve("none.json")))
        .isEqualTo(new Outcome.Unreadable(folder.resolve("none.json"), "no such file"));
  }

  /** Every byte of a capture, one at a time. */
  @Test
  void aChangedCapture() throws Exception {
    Path capture = capture(2);
    for (int i = 0; i < CAPTURE.length; i++) {
      byte[] changed = CAPTURE.clone();
      changed[i] ^= 1;
      Files.write(capture, changed);
      assertThat(fileAnswer(KEY, 2)).isEqualTo(SealAnswer.BROKEN_SEAL);
    }
    assertThat(faults())
        .containsExactly("broken seal: the capture beside it is not the one that was sealed");
  }

  @Test
  void aMissingCaptureIsAFaultOfTheDirectoryAndARemarkOnTheFile() throws Exception {
    Files.delete(capture(2));

    assertThat(faults()).containsExactly("broken seal: its capture is not beside it");
    assertThat(trusting(KEY).file(documents.get(2)))
        .isInstanceOfSatisfying(
            Outcome.Answered.class,
            a -> {
              assertThat(a.answer()).isEqualTo(SealAnswer.TRUSTED_KEY);
              assertThat(a.remark()).isEqualTo("its capture is not beside it");
            });
  }

  /** As one would pass off the sound pump's result as that of the other. */
  @Test
  void aCopyUnderTheNameOfAnotherResult() throws Exception {
    Path taken = documents.get(1);
    Files.copy(documents.get(3), taken, StandardCopyOption.REPLACE_EXISTING);
    Files.copy(capture(3), capture(1), StandardCopyOption.REPLACE_EXISTING);

    String own = documents.get(3).getFileName().toString().replace(".json", "");
    assertThat(((Outcome.Answered) trusting(KEY).file(taken)).remark())
        .isEqualTo("bears another name than it was stored under, 2026/" + own);
  }

  @Test
  void whatElseThereIsToSayIsSaidBesideTheName() throws Exception {
    Path renamed = Files.move(documents.get(3), documents.get(3).resolveSibling("x.json"));
    Files.delete(capture(3));

    assertThat(((Outcome.Answered) trusting(KEY).file(renamed)).remark())
        .startsWith("its capture is not beside it; bears another name than ");
  }

  @Test
  void aDocumentOnItsOwnIsCheckedAsFarAsItGoes(@TempDir Path elsewhere) throws Exception {
    Path alone = Files.copy(documents.get(3), elsewhere.resolve("result.json"));

    assertThat(trusting(KEY).file(alone))
        .isInstanceOfSatisfying(
            Outcome.Answered.class, a -> assertThat(a.answer()).isEqualTo(SealAnswer.TRUSTED_KEY));
  }

  /** A capture is looked for in the folder of its document and nowhere else. */
  @Test
  void captureNamesDoNotLeaveTheFolder(@TempDir Path elsewhere) throws Exception {
    Files.write(elsewhere.resolve("secret.log"), CAPTURE);
    Path inner = Files.createDirectory(elsewhere.resolve("in"));
    for (String name : List.of("../secret.log", elsewhere.resolve("secret.log").toString(), "..")) {
      ObjectNode document = withCapture();
      ((ObjectNode) document.get("evidence")).put("capture", name);
      Path file =
          Files.writeString(
              inner.resolve("x.json"),
              Canonical.text(Seal.seal(document, LedgerPosition.FIRST, KEY)));
      assertThat(((Outcome.Answered) trusting(KEY).file(file)).remark())
          .isEqualTo("it names a capture outside its folder");
    }
  }

  @Test
  void aDirectoryWithoutResults(@TempDir Path empty) {
    assertThatThrownBy(() -> trusting(KEY).directory(empty, o -> {}))
        .isInstanceOf(ArchiveException.class)
        .hasMessageEndingWith("holds no results");
  }

  private static ObjectNode withCapture() {
    ObjectNode document = ExampleDocument.unsealed(99);
    ((ObjectNode) document.get("evidence"))
        .put("capture", "20260302T071607Z_SP-014_pass_00000001.log")
        .put("sha256", org.thumbseal.seal.Sha256.hex(CAPTURE));
    return document;
  }

  private void write(String name, ObjectNode document) throws IOException {
    Files.writeString(folder.resolve("2026").resolve(name), Canonical.text(document) + "\n");
  }

  private Path capture(int index) {
    Path document = documents.get(index);
    return document.resolveSibling(document.getFileName().toString().replace(".json", ".log"));
  }

  private SealAnswer fileAnswer(SigningKey trusted, int index) {
    return ((Outcome.Answered) trusting(trusted).file(documents.get(index))).answer();
  }

  /** Everything but good answers, as answer and remark. */
  private List<String> faults() throws ArchiveException {
    List<String> faults = new ArrayList<>();
    trusting(KEY)
        .directory(
            folder,
            outcome -> {
              if (outcome instanceof Outcome.Unreadable unreadable) {
                faults.add(unreadable.reason());
              } else if (outcome instanceof Outcome.Answered a
                  && a.answer() != SealAnswer.TRUSTED_KEY) {
                faults.add(a.answer().text() + ": " + a.remark());
              }
            });
    return faults;
  }

  private static Verification trusting(SigningKey key) {
    return new Verification(TrustStore.of(key.verifyingKey()));
  }
}
