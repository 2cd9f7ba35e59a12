package org.thumbseal.cli;

import static org.assertj.core.api.Assertions.assertThat;
import static org.thumbseal.cli.ExportedResults.column;
import static org.thumbseal.cli.ExportedResults.rows;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.thumbseal.exchange.Column;
import org.thumbseal.json.ExampleDocument;
import tools.jackson.databind.node.ObjectNode;

/** The command export as it is typed; the tables are read back by another library. */
class ExportCommandTest {
  @TempDir private Path folder;
  private ExportedResults here;

  @BeforeEach
  void empty() throws Exception {
    here = new ExportedResults(folder);
  }

  @Test
  void aRowForEachTestInTheOrderOfTheirBeginning() throws Exception {
    here.store(3, 1, 2);

    CommandRun run = here.export();

    assertThat(run.err()).isEmpty();
    assertThat(run.code()).isZero();
    assertThat(column(run.out(), "asset_id")).containsExactly("SP-1", "SP-2", "SP-3");
    assertThat(rows(run.out(), ',').get(0).getParser().getHeaderNames())
        .isEqualTo(Arrays.stream(Column.values()).map(Column::key).toList());
    assertThat(column(run.out(), "maximum_vacuum_expanded_kpa")).containsOnly("1.4");
    assertThat(column(run.out(), "seal")).containsOnly("trusted-key");
  }

  @Test
  void theSameBytesWhateverTheOrderOfTheFiles() throws Exception {
    Path one = here.store(1, "SP-1");
    Path two = here.store(2, "SP-2");

    String out = here.exportFrom(List.of(one, two)).out();

    assertThat(here.exportFrom(List.of(two, one)).out()).isEqualTo(out);
    assertThat(here.export().out()).isEqualTo(out);
  }

  @Test
  void aTestWithoutADateComesLastAndOfTwoAtOneTimeTheSmallerIdFirst() throws Exception {
    ObjectNode undated = ExampleDocument.unsealed(1);
    ((ObjectNode) undated.get("test")).remove("startedAt");
    here.store(undated);
    for (int number : new int[] {9, 8}) {
      ObjectNode document = ExampleDocument.unsealed(number);
      ((ObjectNode) document.get("test")).put("startedAt", "2026-03-02T08:15:00+01:00");
      here.store(document);
    }

    String out = here.export().out();

    assertThat(column(out, "id").stream().map(id -> id.substring(0, 8)))
        .containsExactly("00000008", "00000009", "00000001");
    assertThat(column(out, "started_at"))
        .containsExactly("2026-03-02T07:15:00.000Z", "2026-03-02T07:15:00.000Z", "");
  }

  /** The list of beginnings is common practice, no published source. */
  @Test
  void noTextRunsAsAFormula() throws Exception {
    List<String> hostile =
        List.of("=1+1", "+1", "-1", "@x", "a;=1+1", "b,\t=1", "\"=1", " =1", "c|@x", "\uFF1D1");
    for (int i = 0; i < hostile.size(); i++) {
      here.store(i + 1, hostile.get(i));
    }

    String csv = here.export().out();
    String lines = here.export("--as", "jsonl").out();

    assertThat(column(csv, "asset_id"))
        .hasSameSizeAs(hostile)
        .noneMatch(cell -> cell.matches("(?s)(.*[;,|])?[\\s\"]*[=+@\uFF1D-].*"))
        .contains("'=1+1", "a;'=1+1", "'-1");
    // A number may be negative, and a program wants the text as it was.
    assertThat(Answer.to("export", "--key", here.key, here.results, "--as", "jsonl").documents())
        .extracting(d -> d.get("asset_id").stringValue())
        .isEqualTo(hostile);
    assertThat(lines).doesNotContain("\t");
  }

  @Test
  void whatWasCorrectedIsExportedAsItStands() throws Exception {
    Path moved = here.store(1, "SP-1");
    Path gone = here.store(2, "SP-2");
    assertThat(here.amend(moved, "--asset", "SP-7", "--note", "label was wet").code()).isZero();
    assertThat(here.amend(gone, "--void", "--reason", "hose of another pump").code()).isZero();

    String out = here.export().out();

    assertThat(column(out, "asset_id")).containsExactly("SP-7", "SP-2");
    assertThat(column(out, "sealed_asset_id")).containsExactly("SP-1", "SP-2");
    assertThat(column(out, "counts")).containsExactly("true", "false");
    assertThat(column(out, "void_reason")).containsExactly("", "hose of another pump");
    assertThat(column(out, "note")).containsExactly("label was wet", "");
    assertThat(column(out, "corrections")).containsExactly("1", "1");
  }

  @Test
  void aCopyIsExportedOnceAndWhatVoidsItElsewhereHoldsForIt() throws Exception {
    Path result = here.store(1, "SP-1");
    Path copy = Files.createDirectory(folder.resolve("copy")).resolve("r.json");
    Files.copy(result, copy);
    here.amend(result, "--void", "--reason", "no test at all");

    CommandRun run = here.exportFrom(List.of(copy, here.results));

    assertThat(run.code()).as(run.err()).isZero();
    assertThat(column(run.out(), "counts")).containsExactly("false");
  }

  @Test
  void whatHasNoGoodSealIsLeftOutAndNamed() throws Exception {
    Path bad = here.store(1, "SP-1");
    here.store(2);
    ExportedResults.spoil(bad);

    CommandRun run = here.export();

    assertThat(run.code()).isEqualTo(1);
    assertThat(column(run.out(), "asset_id")).containsExactly("SP-2");
    assertThat(run.err())
        .contains(bad.getFileName() + ": left out: broken seal")
        .contains("1 exported, left out: 1 without a trusted seal");
    assertThat(column(here.export("--unverified").out(), "seal"))
        .containsExactly("broken-seal", "trusted-key");
  }

  @Test
  void aStrangersResultsAreLeftOut() throws Exception {
    here.store(1);

    CommandRun run = CommandRun.of("export", "--key", folder.resolve("none.pem"), here.results);

    assertThat(run.code()).isEqualTo(1);
    assertThat(rows(run.out(), ',')).isEmpty();
    assertThat(run.err()).contains("left out: good seal by an unknown key");
  }

  @Test
  void aValueInAnotherUnitGetsIntoNoColumn() throws Exception {
    ObjectNode document = ExampleDocument.unsealed(1);
    ((ObjectNode) document.at("/measurements/riseTime")).put("unit", "min");
    here.store(document);

    CommandRun run = here.export();

    assertThat(run.code()).isEqualTo(1);
    assertThat(run.err()).contains("left out: measurements.riseTime is not in s but in 'min'");
  }

  @Test
  void aLogbooksOwnHeadings() throws Exception {
    here.store(1);
    Path mapping =
        mapping(
            "# of the workshop",
            "set separator = ;",
            "set decimal = ,",
            "set zone = Europe/Berlin",
            "Gerät = asset_id",
            "Datum = started_at \"dd.MM.yyyy HH:mm\"",
            "\"Vakuum = max\" = maximum_vacuum_kpa",
            "Ergebnis = verdict pass \"in Ordnung\" fail defekt inconclusive wiederholen invalid wiederholen",
            "Quelle = \"Thumbseal\"");

    CommandRun run = here.export("--mapping", mapping);

    assertThat(run.err()).isEmpty();
    var row = rows(run.out(), ';').get(0);
    assertThat(row.getParser().getHeaderNames())
        .containsExactly("Gerät", "Datum", "Vakuum = max", "Ergebnis", "Quelle");
    assertThat(row.toList())
        .containsExactly("SP-1", "02.03.2026 08:16", "88,41", "in Ordnung", "Thumbseal");
  }

  @Test
  void aVoidTestIsLeftOutWhereTheHeadingsWouldNotShowIt() throws Exception {
    here.amend(here.store(1, "SP-1"), "--void", "--reason", "wrong hose");
    Path mapping = mapping("Pump = asset_id", "Result = verdict");

    CommandRun run = here.export("--mapping", mapping);

    assertThat(rows(run.out(), ',')).isEmpty();
    assertThat(run.err()).contains("left out: void: wrong hose");
    assertThat(run.code()).isZero();
  }

  @Test
  void allMistakesOfAMappingAreNamedByLine() throws Exception {
    here.store(1);
    Path mapping =
        mapping(
            "Pump = asset",
            "no equals sign",
            "",
            "set colour = red",
            "set decimal = x",
            "Date = started_at \"d. MMM\"",
            "R = verdict pass ok fail ok inconclusive a invalid b",
            "R = verdict pass ok",
            "Rise = rise_time_s \"0.0\"",
            "Empty =");

    CommandRun run = here.export("--mapping", mapping);

    assertThat(run.code()).isEqualTo(2);
    assertThat(run.out()).isEmpty();
    assertThat(run.err().lines().map(l -> l.replaceAll(".*: line (\\d+): (.{12}).*", "$1 $2")))
        .containsExactly(
            "1 there is no ",
            "2 write 'their",
            "4 there is no ",
            "5 decimal is '",
            "6 'd. MMM' is ",
            "7 nothing else",
            "8 the heading ",
            "8 say a word f",
            "9 nothing can ",
            "10 say what goe");
  }

  @Test
  void whatWouldNotBeSeenIsRefused() throws Exception {
    here.store(1);
    Path mapping = mapping("Pump = asset_id");

    Stream.of(
            here.export("--mapping", mapping, "--unverified"),
            here.export("--mapping", mapping, "--as", "fhir"),
            here.export("--as", "xml"),
            here.exportFrom(List.of(folder.resolve("none"))))
        .forEach(
            run -> {
              assertThat(run.code()).isEqualTo(2);
              assertThat(run.err().lines()).hasSize(1);
              assertThat(run.out()).isEmpty();
            });
  }

  @Test
  void aFileIsWholeOrNotThere() throws Exception {
    here.store(1);
    Path file = folder.resolve("out.csv");

    CommandRun run = here.export("-o", file);

    assertThat(run.out()).isEmpty();
    assertThat(Files.readString(file)).isEqualTo(here.export().out());
    assertThat(here.export("-o", folder.resolve("no/such.csv")).code()).isEqualTo(3);
  }

  private Path mapping(String... lines) throws Exception {
    return Files.write(folder.resolve("mapping.txt"), List.of(lines));
  }
}
