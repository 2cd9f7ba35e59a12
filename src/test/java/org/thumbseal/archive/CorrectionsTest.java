package org.thumbseal.archive;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.thumbseal.json.Canonical;
import org.thumbseal.json.CorrectionTree;
import org.thumbseal.json.ExampleDocument;
import org.thumbseal.json.JsonGate;
import org.thumbseal.record.Correction;
import org.thumbseal.record.Correction.Change;
import org.thumbseal.record.Correction.Said;
import org.thumbseal.record.Standing;
import org.thumbseal.seal.LedgerPosition;
import org.thumbseal.seal.Seal;
import org.thumbseal.seal.SealAnswer;
import org.thumbseal.seal.SigningKey;
import org.thumbseal.seal.TrustStore;
import tools.jackson.databind.node.ObjectNode;

/** Three results, of which the second is corrected. */
class CorrectionsTest {
  private static final SigningKey KEY = SigningKey.generate();
  private static final Instant NOON = Instant.parse("2026-03-03T12:00:00Z");

  @TempDir private Path folder;
  private final List<Path> documents = new ArrayList<>();
  private TrustStore buildsOn = TrustStore.of(KEY.verifyingKey());
  private Path result;
  private ObjectNode sealed;

  @BeforeEach
  void threeResults() throws Exception {
    try (Archive archive = Archive.open(folder, KEY)) {
      for (int i = 1; i <= 3; i++) {
        documents.add(archive.store(ExampleDocument.unsealed(i), new byte[] {'#'}).document());
      }
    }
    result = documents.get(1);
    sealed = JsonGate.read(result);
  }

  private static Said asset(String id, Instant at) {
    return said(new Change(Optional.of(id), Optional.empty(), Optional.empty()), "", at);
  }

  private static Said note(String text) {
    return said(new Change(Optional.empty(), Optional.of(text), Optional.empty()), "", NOON);
  }

  private static Said voided(boolean gone, String why) {
    return said(new Change(Optional.empty(), Optional.empty(), Optional.of(gone)), why, NOON);
  }

  private static Said said(Change change, String why, Instant at) {
    return new Said(change, Optional.of(why).filter(w -> !w.isEmpty()), Optional.empty(), at);
  }

  private Corrections corrections() throws ArchiveException {
    return Corrections.in(
        folder,
        TrustStore.of(KEY.verifyingKey()),
        remark -> {
          throw new AssertionError(remark);
        });
  }

  private Path amend(Said said) throws ArchiveException {
    return amend(said, KEY);
  }

  private Path amend(Said said, SigningKey key) throws ArchiveException {
    try (Archive archive = Archive.open(folder, new Sealer(key, buildsOn))) {
      Correction next = corrections().next(result, sealed, said);
      return archive.store(CorrectionTree.of(next)).document();
    }
  }

  private Standing standing() throws ArchiveException {
    return corrections().standing(sealed);
  }

  @Test
  void theLastSaysWhatHoldsOfEachThing() throws Exception {
    assertThat(standing()).isEqualTo(Standing.sealed(Optional.of("SP-014")));
    byte[] before = Files.readAllBytes(result);

    amend(note("hose was old"));
    amend(asset("SP-2", NOON));
    amend(voided(true, "wrong hose"));
    assertThat(standing())
        .isEqualTo(
            new Standing(
                Optional.of("SP-2"), Optional.of("hose was old"), Optional.of("wrong hose")));
    amend(voided(false, "it was the right one"));
    amend(asset("SP-3", NOON));

    assertThat(standing())
        .isEqualTo(
            new Standing(Optional.of("SP-3"), Optional.of("hose was old"), Optional.empty()));
    assertThat(corrections().of(sealed))
        .extracting(c -> c.correction().number())
        .containsExactly(1L, 2L, 3L, 4L, 5L);
    assertThat(Files.readAllBytes(result)).isEqualTo(before);
    assertThat(faults()).isEmpty();
  }

  /** Of two, the one in the chain behind the other, though this computer's clock was set back. */
  @Test
  void theOrderIsThatOfTheChainAndNotOfTheClock() throws Exception {
    amend(asset("SP-2", NOON));
    amend(asset("SP-3", NOON.minusSeconds(86_400)));

    assertThat(standing().asset()).contains("SP-3");
  }

  @Test
  void ofTwoWithOneNumberTheLaterHolds() throws Exception {
    Correction early = corrections().next(result, sealed, asset("SP-2", NOON));
    Correction late = corrections().next(result, sealed, asset("SP-3", NOON.plusSeconds(1)));
    try (Archive archive = Archive.open(folder, KEY)) {
      archive.store(CorrectionTree.of(late));
      archive.store(CorrectionTree.of(early));
    }
    assertThat(standing().asset()).contains("SP-3");
  }

  @Test
  void theSameTwiceIsOne() throws Exception {
    Said said = asset("SP-2", NOON);
    Correction one = corrections().next(result, sealed, said);
    Correction again = corrections().next(result, sealed, asset("SP-2", NOON.plusMillis(700)));
    assertThat(again.id()).isEqualTo(one.id()).matches("[0-9a-f]{8}-[0-9a-f]{4}-8[0-9a-f]{3}-.*");

    try (Archive archive = Archive.open(folder, KEY)) {
      assertThat(archive.store(CorrectionTree.of(one)).added()).isTrue();
      assertThat(archive.store(CorrectionTree.of(again)).added()).isFalse();
    }
    amend(asset("SP-3", NOON));
    assertThat(corrections().next(result, sealed, said).id())
        .as("back to what it was is another correction")
        .isNotEqualTo(one.id());
  }

  @Test
  void verifyTellsTheResultWhicheverIsNamed() throws Exception {
    Path correction = amend(asset("SP-2", NOON));
    for (Path named : List.of(result, correction)) {
      assertThat(verification().corrected(named))
          .get()
          .isInstanceOfSatisfying(
              Outcome.Corrected.class,
              c -> {
                assertThat(c.file()).isEqualTo(result);
                assertThat(c.corrections())
                    .extracting(SealedCorrection::file)
                    .containsExactly(correction);
                assertThat(c.standing().asset()).contains("SP-2");
              });
    }
    assertThat(verification().corrected(documents.get(0))).isEmpty();
    assertThat(verification().corrected(folder.resolve("head.json"))).isEmpty();
    assertThat(corrected()).hasSize(1);
  }

  @Test
  void aResultThatIsGone() throws Exception {
    Path correction = amend(asset("SP-2", NOON));
    String name = result.getFileName().toString();
    Files.delete(result);

    assertThat(faults())
        .containsExactlyInAnyOrder(
            "broken chain: document 2 is missing",
            "broken chain: corrects " + name + ", which is missing");
    assertThat(answer(correction))
        .isEqualTo(SealAnswer.BROKEN_CHAIN.text() + ": corrects " + name + ", which is missing");
    assertThat(corrected()).isEmpty();
  }

  @Test
  void aResultThatIsNoLongerWhatItWas() throws Exception {
    Path correction = amend(asset("SP-2", NOON));
    String name = result.getFileName().toString();
    LedgerPosition place = new LedgerPosition(2, sealed.at("/ledger/previous").stringValue());
    ObjectNode other = Seal.seal(sealed.deepCopy().put("verdict", "fail"), place, KEY);
    Files.writeString(result, Canonical.text(other) + "\n");

    String fault = "broken chain: corrects " + name + ", which is no longer what it was";
    assertThat(faults()).contains(fault);
    assertThat(answer(correction)).isEqualTo(fault);
  }

  @Test
  void aResultUnderAnotherNameIsFoundByItsDigest() throws Exception {
    Path correction = amend(asset("SP-2", NOON));
    result = Files.move(result, result.resolveSibling("renamed.json"));

    assertThat(faults()).isEmpty();
    assertThat(answer(correction)).startsWith("good seal by a trusted key");
    assertThat(corrected()).singleElement().extracting(Outcome::file).isEqualTo(result);
  }

  /** By its name alone a reader finds a correction; without it the result would count again. */
  @ParameterizedTest
  @ValueSource(
      strings = {"note.json", "20260303T120000Z_SP-014_pass_0.json", "a_correction_x.json"})
  void aCorrectionUnderAnotherNameIsAFault(String name) throws Exception {
    Path correction = amend(voided(true, "wrong hose"));
    String own = correction.getFileName().toString().replace(".json", "");
    Path hidden = Files.move(correction, correction.resolveSibling(name));

    String fault =
        "broken chain: bears another name than it was stored under, 2026/"
            + own
            + "; nobody finds this correction here: give it its name back";
    assertThat(standing().voided()).isEmpty();
    assertThat(faults()).containsExactly(fault);
    assertThat(answer(hidden)).isEqualTo(fault);
    assertThat(outcomes().stream().filter(o -> o.file().equals(hidden))).hasSize(1);
  }

  /** Found all the same, so it is worth a word and no more. */
  @Test
  void aCorrectionInAnotherFolderIsFound() throws Exception {
    Path correction = amend(voided(true, "wrong hose"));
    Path moved = Files.move(correction, folder.resolve(correction.getFileName()));

    assertThat(standing().voided()).contains("wrong hose");
    assertThat(faults()).isEmpty();
    assertThat(outcomes())
        .filteredOn(Outcome.Remarked.class::isInstance)
        .extracting(Outcome::file)
        .containsExactly(moved);
  }

  @Test
  void aCorrectionThatWasTamperedWithChangesNothing() throws Exception {
    Path correction = amend(asset("SP-2", NOON));
    Files.writeString(correction, Files.readString(correction).replace("SP-2", "SP-9"));

    assertThat(faults()).containsExactly("broken seal: the content is not what was signed");
    assertThat(corrected()).isEmpty();
    List<String> remarks = new ArrayList<>();
    Corrections found = Corrections.in(folder, TrustStore.of(KEY.verifyingKey()), remarks::add);
    assertThat(found.standing(sealed).asset()).contains("SP-014");
    assertThat(remarks).singleElement().asString().contains("is not used", "not what was signed");
  }

  @Test
  void aCorrectionByAStrangerChangesNothingAndIsTold() throws Exception {
    SigningKey stranger = SigningKey.generate();
    amend(voided(true, "because I say so"), stranger);

    assertThat(standing()).isEqualTo(Standing.sealed(Optional.of("SP-014")));
    assertThat(corrected())
        .singleElement()
        .satisfies(
            c -> {
              assertThat(c.standing().voided()).isEmpty();
              assertThat(c.corrections())
                  .extracting(SealedCorrection::counts)
                  .containsExactly(false);
            });
  }

  /** B trusts A and not C; whoever trusts all three must see what B said last. */
  @Test
  void whatIsSaidAfterAStrangerHoldsForThoseWhoTrustBoth() throws Exception {
    SigningKey stranger = SigningKey.generate();
    amend(voided(true, "wrong hose"), stranger);
    amend(voided(false, "it was the right one"), stranger);
    buildsOn = TrustStore.of(KEY.verifyingKey(), stranger.verifyingKey());
    amend(voided(true, "the jar leaked"));

    TrustStore both = TrustStore.of(KEY.verifyingKey(), stranger.verifyingKey());
    Corrections seen = Corrections.in(folder, both, remark -> {});
    assertThat(seen.of(sealed))
        .extracting(c -> c.correction().number())
        .containsExactly(1L, 2L, 3L);
    assertThat(seen.standing(sealed).voided()).contains("the jar leaked");
  }

  @Test
  void aStrangerCannotUseTheNumbersUp() throws Exception {
    SigningKey stranger = SigningKey.generate();
    Correction next = corrections().next(result, sealed, note("x"));
    try (Archive archive = Archive.open(folder, new Sealer(stranger, buildsOn))) {
      archive.store(CorrectionTree.of(next).put("number", (1L << 53) - 1));
    }
    buildsOn = TrustStore.of(KEY.verifyingKey(), stranger.verifyingKey());
    amend(note("mine"));
    amend(note("mine again"));

    assertThat(corrections().of(sealed))
        .filteredOn(SealedCorrection::counts)
        .extracting(c -> c.correction().number())
        .containsExactly(1L, 2L);
  }

  /** What the own keys said last stays the last, though one before it is gone. */
  @Test
  void aMissingCorrectionDoesNotSetTheCountBack() throws Exception {
    Path first = amend(voided(true, "wrong hose"));
    amend(voided(false, "it was the right one"));
    Files.delete(first);

    assertThat(corrections().next(result, sealed, voided(true, "x")).number()).isEqualTo(3);
  }

  /** Sealed by a trusted key, and yet nonsense. */
  @Test
  void aCorrectionThatNamesWhatTheResultIsNot() throws Exception {
    ObjectNode next = CorrectionTree.of(corrections().next(result, sealed, note("x")));
    ((ObjectNode) next.get("corrects")).put("sequence", 3);
    try (Archive archive = Archive.open(folder, KEY)) {
      archive.store(next);
    }
    assertThat(faults())
        .containsExactly(
            "broken chain: names an id or a place in the ledger that "
                + result.getFileName()
                + " does not have");
  }

  @Test
  void aCorrectionOfALaterVersionIsNotGuessedAt() throws Exception {
    ObjectNode next = CorrectionTree.of(corrections().next(result, sealed, note("x")));
    next.put("schema", "thumbseal-correction/2");
    try (Archive archive = Archive.open(folder, KEY)) {
      archive.store(next);
    }
    assertThat(faults()).containsExactly("is no correction of version 1");
  }

  private static Verification verification() {
    return new Verification(TrustStore.of(KEY.verifyingKey()));
  }

  private String answer(Path file) {
    Outcome.Answered answered = (Outcome.Answered) verification().file(file);
    return answered.answer().text() + ": " + answered.remark();
  }

  private List<Outcome> outcomes() throws ArchiveException {
    List<Outcome> outcomes = new ArrayList<>();
    verification().directory(folder, outcomes::add);
    return outcomes;
  }

  private List<Outcome.Corrected> corrected() throws ArchiveException {
    return outcomes().stream()
        .filter(Outcome.Corrected.class::isInstance)
        .map(Outcome.Corrected.class::cast)
        .toList();
  }

  private List<String> faults() throws ArchiveException {
    List<String> faults = new ArrayList<>();
    for (Outcome outcome : outcomes()) {
      if (outcome instanceof Outcome.Unreadable unreadable) {
        faults.add(unreadable.reason());
      } else if (outcome instanceof Outcome.Answered a && a.answer() != SealAnswer.TRUSTED_KEY) {
        faults.add(a.answer().text() + ": " + a.remark());
      }
    }
    return faults;
  }
}
