package org.thumbseal.archive;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.thumbseal.json.Canonical;
import org.thumbseal.json.ExampleDocument;
import org.thumbseal.json.JsonGate;
import org.thumbseal.seal.ChainEnd;
import org.thumbseal.seal.Head;
import org.thumbseal.seal.LedgerEntry;
import org.thumbseal.seal.LedgerPosition;
import org.thumbseal.seal.Seal;
import org.thumbseal.seal.SealAnswer;
import org.thumbseal.seal.Sha256;
import org.thumbseal.seal.SigningKey;
import org.thumbseal.seal.TrustStore;
import tools.jackson.databind.node.ObjectNode;

/** A directory in which a new key has taken over after three documents and sealed two. */
class ContinuedChainTest {
  private static final byte[] CAPTURE = "# thumbseal capture 1\n".getBytes(StandardCharsets.UTF_8);
  private static final SigningKey OLD = SigningKey.generate();
  private static final SigningKey NEW = SigningKey.generate();

  @TempDir private Path folder;
  private final List<Path> documents = new ArrayList<>();

  @BeforeEach
  void twoChains() throws Exception {
    store(OLD, 1, 2, 3);
    store(NEW, 4, 5);
  }

  private void store(SigningKey key, int... numbers) throws Exception {
    try (Archive archive = Archive.open(folder, trusting(key))) {
      assertThat(archive.notes()).isEmpty();
      for (int number : numbers) {
        documents.add(archive.store(ExampleDocument.unsealed(number), CAPTURE).document());
      }
    }
  }

  private static Sealer trusting(SigningKey key) {
    return new Sealer(key, TrustStore.of(OLD.verifyingKey(), NEW.verifyingKey()));
  }

  @Test
  void theFirstDocumentOfTheNewKeyNamesTheEndOfTheOldChain() throws Exception {
    ObjectNode last = JsonGate.read(documents.get(2));
    ObjectNode first = JsonGate.read(documents.get(3));

    assertThat(first.at("/ledger/sequence").intValue()).isEqualTo(1);
    assertThat(first.at("/ledger/previous").stringValue()).isEqualTo(Sha256.ZEROS);
    assertThat(first.at("/ledger/continues/kid").stringValue()).isEqualTo(OLD.verifyingKey().kid());
    assertThat(first.at("/ledger/continues/sequence").intValue()).isEqualTo(3);
    assertThat(first.at("/ledger/continues/digest").stringValue()).isEqualTo(Seal.digest(last));
    assertThat(JsonGate.read(documents.get(4)).at("/ledger/continues").isMissingNode()).isTrue();
    assertThat(JsonGate.read(documents.get(0)).at("/ledger/continues").isMissingNode()).isTrue();
  }

  @Test
  void bothChainsVerify() throws Exception {
    assertThat(faults()).isEmpty();
    for (Path document : documents) {
      assertThat(answer(document)).isEqualTo(SealAnswer.TRUSTED_KEY);
    }
  }

  /** The old key may come back, from another place where it was not changed: it has its chain. */
  @Test
  void theOldKeyGoesOnInItsOwnChain() throws Exception {
    store(OLD, 6);

    assertThat(JsonGate.read(documents.get(5)).at("/ledger/sequence").intValue()).isEqualTo(4);
    assertThat(faults()).isEmpty();
  }

  @Test
  void aCutOffEndOfTheOldChainIsFound() throws Exception {
    Files.delete(documents.get(2));

    assertThat(faults())
        .containsExactlyInAnyOrder(
            "broken chain: document 3 is missing: the end was cut off",
            "broken chain: continues document 3 of an earlier key, which is not there as it was");
    assertThat(answer(documents.get(3))).isEqualTo(SealAnswer.BROKEN_CHAIN);
  }

  /** The power went before the head was moved, and the key was renewed before the next start. */
  @Test
  void whatTheOldKeyStoredLastIsTakenUpUnderTheNewOne(@TempDir Path other) throws Exception {
    byte[] headBefore;
    Path last;
    try (Archive archive = Archive.open(other, OLD)) {
      archive.store(ExampleDocument.unsealed(1), CAPTURE);
      headBefore = Files.readAllBytes(other.resolve("head.json"));
      last = archive.store(ExampleDocument.unsealed(2), CAPTURE).document();
    }
    Files.write(other.resolve("head.json"), headBefore);
    try (Archive archive = Archive.open(other, trusting(NEW))) {
      assertThat(archive.notes()).singleElement().asString().contains("head.json now names");
      ObjectNode first = archive.store(ExampleDocument.unsealed(3), CAPTURE).sealed();
      assertThat(first.at("/ledger/continues/digest").stringValue())
          .isEqualTo(Seal.digest(JsonGate.read(last)));
    }

    assertThat(faults(other)).isEmpty();
  }

  /** By somebody who has the new key, and so can seal a head that knows nothing of the old one. */
  @Test
  void theOldChainTakenAwayWithAHeadToMatchIsFound() throws Exception {
    for (Path gone : documents.subList(0, 3)) {
      Files.delete(gone);
    }
    Head head = Head.read(JsonGate.read(folder.resolve("head.json"))).orElseThrow();
    Head forged = new Head(head.last(), List.of(), head.document());
    Files.writeString(folder.resolve("head.json"), Canonical.text(forged.sealed(NEW)));

    assertThat(faults())
        .containsExactly(
            "broken chain: continues document 3 of an earlier key, which is not there as it was");
  }

  /** It names what there is; but whoever has no trusted key could have named less. */
  @Test
  void aHeadByAStrangerVouchesForNoSingleDocument() throws Exception {
    Path file = folder.resolve("head.json");
    Head head = Head.read(JsonGate.read(file)).orElseThrow();
    Files.writeString(file, Canonical.text(head.sealed(SigningKey.generate())));

    assertThat(answer(documents.get(4))).isEqualTo(SealAnswer.BROKEN_CHAIN);
  }

  @ParameterizedTest
  @CsvSource({"digest", "sequence", "kid"})
  void namingWhatIsNotThereIsFound(String wrong) throws Exception {
    ObjectNode first = JsonGate.read(documents.get(3));
    ChainEnd end =
        new ChainEnd(
            wrong.equals("kid") ? NEW.verifyingKey().kid() : OLD.verifyingKey().kid(),
            wrong.equals("sequence") ? 2 : 3,
            wrong.equals("digest")
                ? Sha256.hex(new byte[0])
                : first.at("/ledger/continues/digest").stringValue());
    Path alone = folder.resolve("other");
    try (Archive archive = Archive.open(alone, OLD)) {
      for (int i = 1; i <= 3; i++) {
        archive.store(ExampleDocument.unsealed(i), CAPTURE);
      }
    }
    ObjectNode sealed = Seal.seal(first, LedgerPosition.FIRST.continuing(end), NEW);
    Path file = alone.resolve("2026").resolve(documents.get(3).getFileName());
    Files.writeString(file, Canonical.text(sealed) + "\n");
    Files.copy(
        documents.get(3).resolveSibling(sealed.at("/evidence/capture").stringValue()),
        file.resolveSibling(sealed.at("/evidence/capture").stringValue()));
    Head head = Head.read(JsonGate.read(alone.resolve("head.json"))).orElseThrow();
    ChainEnd moved = ChainEnd.none(NEW.verifyingKey().kid()).then(Seal.digest(sealed));
    Files.writeString(
        alone.resolve("head.json"),
        Canonical.text(head.moved(moved, "2026/" + file.getFileName()).sealed(NEW)));

    assertThat(faults(alone))
        .containsExactly(
            "broken chain: continues document "
                + end.sequence()
                + " of an earlier key, which is not there as it was");
    assertThat(answer(file)).isEqualTo(SealAnswer.BROKEN_CHAIN);
  }

  @Test
  void aMalformedTieIsNoPlaceInALedger() throws Exception {
    ObjectNode first = JsonGate.read(documents.get(3));
    assertThat(LedgerEntry.read(first)).isPresent();
    ((ObjectNode) first.get("ledger")).put("continues", "document 3");

    assertThat(LedgerEntry.read(first)).isEmpty();
  }

  /** Power lost after the first document of the new key, before the head. */
  @Test
  void anInterruptedFirstDocumentIsTakenIn() throws Exception {
    Path again = folder.resolve("again");
    try (Archive archive = Archive.open(again, OLD)) {
      archive.store(ExampleDocument.unsealed(1), CAPTURE);
    }
    String head = Files.readString(again.resolve("head.json"));
    try (Archive archive = Archive.open(again, trusting(NEW))) {
      archive.store(ExampleDocument.unsealed(2), CAPTURE);
    }
    Files.writeString(again.resolve("head.json"), head);

    try (Archive archive = Archive.open(again, trusting(NEW))) {
      assertThat(archive.notes()).singleElement().asString().contains("head.json now names");
    }
    assertThat(faults(again)).isEmpty();
  }

  private static SealAnswer answer(Path document) {
    return ((Outcome.Answered) verification().file(document)).answer();
  }

  private List<String> faults() throws ArchiveException {
    return faults(folder);
  }

  private static List<String> faults(Path directory) throws ArchiveException {
    List<String> faults = new ArrayList<>();
    verification()
        .directory(
            directory,
            outcome -> {
              if (outcome instanceof Outcome.Answered a && a.answer() != SealAnswer.TRUSTED_KEY) {
                faults.add(a.answer().text() + ": " + a.remark());
              }
            });
    return faults;
  }

  private static Verification verification() {
    return new Verification(TrustStore.of(OLD.verifyingKey(), NEW.verifyingKey()));
  }
}
