package org.thumbseal.archive;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assumptions.assumeThat;

import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.nio.file.attribute.PosixFilePermissions;
import java.util.Arrays;
import java.util.List;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.thumbseal.json.Canonical;
import org.thumbseal.json.JsonGate;
import org.thumbseal.seal.LedgerPosition;
import org.thumbseal.seal.Seal;
import org.thumbseal.seal.Sha256;
import org.thumbseal.seal.SigningKey;
import tools.jackson.databind.node.ObjectNode;

/** What is said of a whole directory in which something is not as it was left. */
class DirectoryFaultsTest {
  @TempDir private Path folder;
  private FiveResults results;
  private String name;

  @BeforeEach
  void fiveResults() throws Exception {
    results = FiveResults.in(folder);
    name = folder.getFileName().toString();
  }

  @Test
  void nothingToSay() throws Exception {
    assertThat(results.odd()).isEmpty();
    assertThat(results.said()).hasSize(5).isSorted();
  }

  @ParameterizedTest
  @CsvSource({
    "1,       document 1 is missing",
    "3,       document 3 is missing",
    "5,       document 5 is missing: the end was cut off",
    "2 3,     documents 2 to 3 are missing",
    "4 5,     documents 4 to 5 are missing: the end was cut off",
    "1 3,     document 1 is missing; document 3 is missing",
    "2 5,     document 2 is missing; document 5 is missing: the end was cut off",
    "1 2 3 4, documents 1 to 4 are missing",
    "1 2 3 4 5, documents 1 to 5 are missing: the end was cut off",
  })
  void missing(String numbers, String texts) throws Exception {
    for (String number : numbers.split(" ", -1)) {
      Path document = results.document(Integer.parseInt(number));
      Files.delete(document);
      Files.delete(FiveResults.capture(document));
    }

    assertThat(results.odd())
        .containsExactlyElementsOf(
            Arrays.stream(texts.split("; ", -1))
                .map(text -> name + ": broken chain: " + text)
                .toList());
  }

  @Test
  void insertedByAStranger() throws Exception {
    Path file = results.put(results.another(LedgerPosition.FIRST, SigningKey.generate()));

    assertThat(results.odd())
        .containsExactly(file.getFileName() + ": broken chain: is not known to head.json");
  }

  /** Whoever has the key can seal a document for any place; each is taken or does not fit. */
  @Test
  void insertedByTheOwnKey() throws Exception {
    ObjectNode third = JsonGate.read(results.document(3));
    String previous = third.at("/ledger/previous").stringValue();
    Path fork = results.put(results.another(new LedgerPosition(3, previous), results.key()));

    assertThat(results.odd())
        .containsExactly(
            results.document(3).getFileName()
                + ": broken chain: fork: two documents bear number 3;"
                + " the chain goes on from this one",
            fork.getFileName()
                + ": broken chain: fork: two documents bear number 3;"
                + " the chain does not go on from this one");
  }

  @Test
  void insertedByTheOwnKeyBeyondTheEnd() throws Exception {
    Path beyond = results.put(results.another(new LedgerPosition(7, Sha256.ZEROS), results.key()));

    assertThat(results.odd())
        .containsExactly(
            name + ": broken chain: document 6 is missing",
            beyond.getFileName() + ": broken chain: is not known to head.json");
  }

  @Test
  void aForkAtTheEnd() throws Exception {
    ObjectNode fifth = JsonGate.read(results.document(5));
    String previous = fifth.at("/ledger/previous").stringValue();
    Path fork = results.put(results.another(new LedgerPosition(5, previous), results.key()));

    String text = ": broken chain: fork: two documents bear number 5";
    assertThat(results.odd())
        .containsExactly(
            results.document(5).getFileName() + text + "; head.json names this one",
            fork.getFileName() + text + "; head.json does not name this one");
  }

  /** The name is no part of what is sealed: that two were exchanged is said, and no fault. */
  @Test
  void twoNamesExchanged() throws Exception {
    Path second = results.document(2);
    Path third = results.document(3);
    Path aside = Files.move(second, folder.resolve("aside"));
    Files.move(third, second);
    Files.move(aside, third);

    assertThat(results.odd())
        .containsExactly(remarkedName(second, third), remarkedName(third, second));
    assertThat(results.said()).hasSize(7);
  }

  private static String remarkedName(Path file, Path own) {
    String stem = own.getFileName().toString().replace(".json", "");
    String text = ": remark: bears another name than it was stored under, 2026/" + stem;
    return file.getFileName() + text;
  }

  /** Readers of calibrations go by the name: no test would be calibrated by it any more. */
  @Test
  void aCalibrationUnderAnotherName() throws Exception {
    ObjectNode document = org.thumbseal.json.ExampleDocument.unsealed(6);
    document.put("kind", "calibration").put("calibratedAt", "2026-02-20T08:12:00Z");
    document.remove("evidence");
    Path calibration;
    try (Archive archive = Archive.open(folder, results.key())) {
      calibration = archive.store(document).document();
    }
    assertThat(results.odd()).isEmpty();
    Files.move(calibration, calibration.resolveSibling("old.json"));

    assertThat(results.odd())
        .containsExactly(
            "old.json: broken chain: bears another name than it was stored under, 2026/"
                + calibration.getFileName().toString().replace(".json", "")
                + "; nobody finds this calibration here: give it its name back");
  }

  @Test
  void theSameDocumentTwice() throws Exception {
    Path copy = Files.copy(results.document(2), results.document(2).resolveSibling("copy.json"));

    assertThat(results.odd())
        .containsExactly(
            remarkedName(copy, results.document(2)),
            "copy.json: broken chain: is a copy of " + results.document(2).getFileName());
  }

  /**
   * What no file of the directory can show: the end is gone, and the head is the one that was there
   * before it. Only the capture, if it was forgotten, is noticed.
   */
  @Test
  void theEndCutOffAndAnOlderHeadPutBack(@TempDir Path elsewhere) throws Exception {
    FiveResults other = FiveResults.in(elsewhere);
    Path kept = Files.copy(elsewhere.resolve("head.json"), elsewhere.resolve("kept"));
    Path sixth;
    try (Archive archive = Archive.open(elsewhere, other.key())) {
      ObjectNode document = org.thumbseal.json.ExampleDocument.unsealed(6);
      sixth = archive.store(document, FiveResults.CAPTURE).document();
    }
    Files.move(kept, elsewhere.resolve("head.json"), StandardCopyOption.REPLACE_EXISTING);
    assertThat(other.odd())
        .containsExactly(sixth.getFileName() + ": broken chain: is not known to head.json");

    Files.delete(sixth);
    assertThat(other.odd())
        .containsExactly(
            FiveResults.capture(sixth).getFileName()
                + ": remark: is a capture that no document here names");

    Files.delete(FiveResults.capture(sixth));
    assertThat(other.odd()).isEmpty();
  }

  @Test
  void capturesThatAreNotWhatTheyWere() throws Exception {
    Files.writeString(FiveResults.capture(results.document(1)), "# thumbseal capture 2\n");
    Files.delete(FiveResults.capture(results.document(2)));
    Files.writeString(FiveResults.capture(results.document(3)), "");
    Path fourth = FiveResults.capture(results.document(4));
    Files.createSymbolicLink(fourth, Files.move(fourth, folder.resolve("2026/moved")));
    Path fifth = FiveResults.capture(results.document(5));
    Files.delete(fifth);
    Files.createDirectory(fifth);

    assertThat(results.odd().stream().filter(line -> line.contains("broken")))
        .containsExactly(
            broken(1, "the capture beside it is not the one that was sealed"),
            broken(2, "its capture is not beside it"),
            broken(3, "the capture beside it is not the one that was sealed"),
            broken(4, "its capture is a symbolic link, which is not followed"),
            broken(5, "its capture is not beside it"));
  }

  private String broken(int number, String text) {
    return results.document(number).getFileName() + ": broken seal: " + text;
  }

  @Test
  void whatIsNoPartOfTheEvidence() throws Exception {
    Path year = folder.resolve("2026");
    Files.writeString(year.resolve("a.log"), "a capture");
    Files.writeString(year.resolve(".x.json.tmp"), "{");
    Files.writeString(year.resolve(".hidden"), "");
    Files.writeString(year.resolve("b.html"), "");
    Files.writeString(year.resolve("a.html"), "");
    Files.createDirectory(year.resolve("deeper"));
    Files.writeString(folder.resolve("notes.txt"), "");
    Files.writeString(Files.createDirectory(folder.resolve("pictures")).resolve("1.png"), "");

    assertThat(results.odd())
        .containsExactly(
            name + ": remark: notes.txt was not looked at: not of this program",
            ".x.json.tmp: remark: is an unfinished write;"
                + " the next program that writes here clears it away",
            "a.log: remark: is a capture that no document here names",
            "2026: remark: 3 others, such as a.html, were not looked at: not of this program");
  }

  @Test
  void namedAsDocumentsAndNone(@TempDir Path elsewhere) throws Exception {
    Path year = folder.resolve("2026");
    Files.createFile(year.resolve("x1.json"));
    Files.createDirectory(year.resolve("x2.json"));
    Path outside = Files.move(results.document(5), elsewhere.resolve("5.json"));
    Files.createSymbolicLink(results.document(5), outside);
    Files.createSymbolicLink(year.resolve("x3.json"), elsewhere.resolve("nowhere"));

    assertThat(results.odd())
        .containsExactly(
            results.document(5).getFileName()
                + ": unreadable: is a symbolic link, which is not followed;"
                + " put the document itself there",
            "x1.json: unreadable: is not a JSON object",
            "x2.json: unreadable: is a directory, not a file",
            "x3.json: unreadable: is a symbolic link, which is not followed;"
                + " put the document itself there",
            name + ": broken chain: document 5 is missing: the end was cut off");
  }

  /** Opening a pipe that nobody writes to would wait for ever. */
  @Test
  void aPipeIsNotOpened() throws Exception {
    Path pipe = folder.resolve("2026/pipe.json");
    assumeThat(run("mkfifo", pipe.toString())).as("mkfifo").isTrue();

    assertThat(results.odd())
        .containsExactly("pipe.json: unreadable: is a device or a pipe, not a document");
  }

  private static boolean run(String... command) throws Exception {
    try {
      return new ProcessBuilder(command).start().waitFor() == 0;
    } catch (java.io.IOException e) {
      return false;
    }
  }

  /** The superuser may read everything, and then nothing is wrong. */
  @Test
  void whatMayNotBeRead() throws Exception {
    Path year = folder.resolve("2026");
    Files.setPosixFilePermissions(
        results.document(1), PosixFilePermissions.fromString("---------"));
    if (Files.isReadable(results.document(1))) {
      assertThat(results.odd()).isEmpty();
      return;
    }
    assertThat(results.odd())
        .containsExactly(
            results.document(1).getFileName() + ": unreadable: may not be read: permission denied",
            name + ": broken chain: document 1 is missing");
    Files.setPosixFilePermissions(year, PosixFilePermissions.fromString("---------"));
    try {
      assertThat(results.odd()).contains("2026: unreadable: may not be read: permission denied");
    } finally {
      Files.setPosixFilePermissions(year, PosixFilePermissions.fromString("rwx------"));
    }
  }

  @Test
  void theFolderOfAYearMayLieElsewhere(@TempDir Path elsewhere) throws Exception {
    Path moved = Files.move(folder.resolve("2026"), elsewhere.resolve("2026"));
    Files.createSymbolicLink(folder.resolve("2026"), moved);

    assertThat(results.odd()).isEmpty();
    assertThat(results.said()).hasSize(5);
  }

  @Test
  void aDirectoryInItself() throws Exception {
    Files.createSymbolicLink(folder.resolve("again"), folder);

    assertThat(results.odd())
        .containsExactly(
            "head.json: broken chain: has no place in a ledger",
            "again: remark: 2 others, such as 2026, were not looked at: not of this program");
  }

  /** White space and the order of names are no content, and the next document's link holds. */
  @Test
  void aReformattedDocumentInTheMiddle() throws Exception {
    ObjectNode third = JsonGate.read(results.document(3));
    Files.writeString(results.document(3), third.toPrettyString());

    assertThat(results.odd()).isEmpty();
  }

  @Test
  void aDocumentSealedAnewBreaksWhatFollows() throws Exception {
    ObjectNode third = JsonGate.read(results.document(3));
    LedgerPosition place = new LedgerPosition(3, third.at("/ledger/previous").stringValue());
    ObjectNode changed = Seal.seal(third.put("verdict", "fail"), place, results.key());
    Files.writeString(results.document(3), Canonical.text(changed));

    assertThat(results.odd())
        .contains(
            results.document(4).getFileName()
                + ": broken chain: does not follow "
                + results.document(3).getFileName());
  }

  @Test
  void progressIsToldForEachDocument() throws Exception {
    List<String> told = new java.util.ArrayList<>();
    results.verification().directory(folder, o -> {}, (done, all) -> told.add(done + " of " + all));

    assertThat(told).containsExactly("1 of 5", "2 of 5", "3 of 5", "4 of 5", "5 of 5");
  }

  /** Results that were sealed in another order than they were recorded: replayed, as it were. */
  @Test
  void neighboursInTheChainNeedNotBeNeighboursInTime(@TempDir Path elsewhere) throws Exception {
    SigningKey key = SigningKey.generate();
    List<Path> documents = new java.util.ArrayList<>();
    try (Archive archive = Archive.open(elsewhere, key)) {
      for (int i = 0; i < 40; i++) {
        ObjectNode document = org.thumbseal.json.ExampleDocument.unsealed(1 + i * 17 % 40);
        documents.add(archive.store(document, FiveResults.CAPTURE).document());
      }
    }
    FiveResults shuffled = new FiveResults(elsewhere, key, documents);
    Verification verification = shuffled.verification();

    assertThat(documents)
        .allSatisfy(
            file ->
                assertThat(verification.file(file))
                    .isInstanceOfSatisfying(
                        Outcome.Answered.class, a -> assertThat(a.remark()).isEmpty()));
    assertThat(shuffled.odd()).isEmpty();
    Files.delete(documents.get(20));
    assertThat(((Outcome.Answered) shuffled.verification().file(documents.get(21))).remark())
        .isEqualTo("the document before it is missing");
  }
}
