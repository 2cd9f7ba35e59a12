package org.thumbseal.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;
import org.thumbseal.seal.Seal;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.node.ObjectNode;

/** The command {@code refer} as it is typed, over really sealed documents. */
@Timeout(120)
class ReferCommandTest {
  @TempDir private Path folder;
  private Path results;
  private Path key;
  private List<Path> files = List.of();

  @BeforeEach
  void aPumpWithAPast() throws Exception {
    results = folder.resolve("results");
    key = folder.resolve("keys/k.pem");
    files = new ReferredPump(results, key).wholeLife();
  }

  private Answer refer(Object... args) {
    List<Object> all = new ArrayList<>(List.of("refer"));
    all.addAll(Arrays.asList(args));
    all.addAll(List.of("--results", results, "--key", key));
    return Answer.to(all.toArray());
  }

  private ObjectNode document() {
    return refer("SP-014", "--json").onlyDocument();
  }

  private static List<String> texts(JsonNode array) {
    return array.valueStream().map(JsonNode::stringValue).toList();
  }

  @Test
  void saysWhatWasDoneAndWhatWasNot() {
    Answer answer = refer("SP-014", "--complaint", "hisses");
    assertThat(answer.err()).isEmpty();
    assertThat(answer.code()).isZero();
    assertThat(answer.out())
        .contains("Complaint: hisses", "19 results, of which 18 count as judged")
        .contains("INFECTIOUS: used on an infectious patient on 20 Feb 2026")
        .contains("2 Mar 2026: Tubing (8 mm, 1.5 m, split)", "earth bond 0.08 ohm")
        .contains("since the last good test on 7 Jan 2026")
        .contains("Not looked at: filter, overflow valve, outside.")
        .contains("Not replaced: jar, filter.", "No leak search.", "was not gone through");
  }

  @Test
  void quotesTheFailuresBesideTheLastGoodOneByTheirDigests() throws Exception {
    List<JsonNode> drawn =
        document().get("tests").valueStream().filter(t -> t.get("drawn").booleanValue()).toList();
    assertThat(drawn.stream().map(t -> t.get("verdict").stringValue()))
        .containsExactly("pass", "fail", "fail", "fail");
    Path last = files.get(files.size() - 1);
    JsonNode source = drawn.get(3).get("source");
    assertThat(source.get("file").stringValue()).isEqualTo(last.getFileName().toString());
    assertThat(source.get("digest").stringValue()).isEqualTo(Seal.digest(ResultFiles.read(last)));
    Path page = folder.resolve("sheet.html");
    refer("SP-014", "-o", page);
    assertThat(Files.readString(page))
        .contains(source.get("digest").stringValue(), source.get("kid").stringValue())
        .contains("stroke=\"#0b3d78\"");
  }

  @Test
  void whatIsVoidIsShownAndDoesNotCount() throws Exception {
    Path last = files.get(files.size() - 1);
    CommandRun.of("amend", last, "--void", "--reason", "wrong hose", "--key", key);
    ObjectNode document = document();
    JsonNode test = document.at("/tests/18");
    assertThat(test.get("voided").stringValue()).isEqualTo("wrong hose");
    assertThat(test.get("drawn").booleanValue()).isFalse();
    // What was looked at before it is not known either.
    assertThat(texts(document.at("/untried/unseen"))).contains("cord", "jar");
    assertThat(refer("SP-014").out()).contains("VOID", "void: wrong hose");
  }

  @Test
  void aTestThatBelongsToAnotherPumpIsItsOwn() throws Exception {
    Path last = files.get(files.size() - 1);
    CommandRun.of("amend", last, "--asset", "SP-015", "--key", key);
    assertThat(document().get("tests")).hasSize(18);
    assertThat(refer("SP-015").out()).contains("1 results, of which 1 count", "corrected");
  }

  @Test
  void guideAndSearchAreQuoted() throws Exception {
    ReferralPictures.guide(results, key);
    new ReferredPump(results, key).named("SP-077").search("2026-03-06", "unused", "unused");
    Answer answer = refer("SP-014");
    assertThat(answer.out())
        .contains("Trouble guide on ", "Is it strong now?", "hisses at the lid", "No leak search.")
        .doesNotContain("was not gone through", "on no patient");
    assertThat(refer("SP-077").out())
        .contains("Leak search on 6 Mar 2026, A. Nurse", "unused", "0 results");
  }

  @Test
  void aRegisterIsQuotedAsSuch() throws Exception {
    Path register = folder.resolve("pumps.csv");
    Files.writeString(register, "id,description,serial\nSP-014,<b>pump</b>,55-1204\nSP-9,pump,1\n");
    Path page = folder.resolve("sheet.html");
    assertThat(refer("SP-014", "--register", register, "-o", page).code()).isZero();
    assertThat(Files.readString(page))
        .contains("(not sealed):", "&lt;b&gt;pump&lt;/b&gt;", "serial number 55-1204")
        .doesNotContain("<b>pump", "<script", "http://", "https://");
    Answer untested = refer("SP-9", "--register", register);
    assertThat(untested.code()).isEqualTo(ExitCode.USAGE);
    assertThat(untested.err())
        .contains("SP-9: it is in the list of pumps, but no sealed record")
        .hasLineCount(1);
  }

  @Test
  void aDocumentThatIsNotWhatWasTakenInIsNotQuoted() throws Exception {
    refer("SP-014");
    Path last = files.get(files.size() - 1);
    Files.writeString(last, Files.readString(last).replace("\"fail\"", "\"pass\""));
    Path page = folder.resolve("sheet.html");
    assertThat(refer("SP-014", "-o", page).code()).isZero();
    assertThat(Files.readString(page)).contains("No curve");
  }

  @Test
  void asOfADay() {
    assertThat(refer("SP-014", "--on", "2026-01-07").out())
        .contains("15 results", "Sterilise")
        .doesNotContain("INFECTIOUS", "Mar 2026");
  }

  @Test
  void theSameRecordGivesTheSameBytes() throws Exception {
    Path page = folder.resolve("sheet.html");
    refer("SP-014", "--on", "2026-03-31", "-o", page);
    String first = Files.readString(page);
    refer("SP-014", "--on", "2026-03-31", "-o", page);
    assertThat(Files.readString(page)).isEqualTo(first);
  }

  @Test
  void mistakesGetOneLine() {
    Answer unknown = refer("SP-none");
    assertThat(unknown.code()).isEqualTo(ExitCode.USAGE);
    assertThat(unknown.err()).contains("SP-none: no sealed record is of this").hasLineCount(1);

    Answer noFolder = Answer.to("refer", "SP-1", "--key", key, "--results", folder.resolve("no"));
    assertThat(noFolder.code()).isEqualTo(ExitCode.USAGE);
    assertThat(noFolder.err()).contains("no such directory").hasLineCount(1);

    Answer nowhere = refer("SP-014", "-o", folder.resolve("nowhere/sheet.html"));
    assertThat(nowhere.code()).isEqualTo(ExitCode.USAGE);
    assertThat(nowhere.err()).contains("nowhere: there is no such folder").hasLineCount(1);
    assertThat(folder.resolve("nowhere")).doesNotExist();

    Answer noPage = refer("SP-014", "-o", folder.resolve("sheet.pdf"));
    assertThat(noPage.code()).isEqualTo(ExitCode.USAGE);
    assertThat(noPage.err()).contains("-o FILE.html").hasLineCount(1);

    Answer longWords = refer("SP-014", "--complaint", "x".repeat(301));
    assertThat(longWords.code()).isEqualTo(ExitCode.USAGE);
    assertThat(longWords.err()).contains("--complaint must be 1 to 300").hasLineCount(1);
  }
}
