package org.thumbseal.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.SQLException;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.regex.Pattern;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.thumbseal.exchange.Column;
import org.thumbseal.exchange.Mapping;
import org.thumbseal.json.ExampleDocument;
import org.thumbseal.json.JsonGate;
import tools.jackson.databind.node.ObjectNode;

/** The command import-check, and what the page about it promises. */
class ImportCheckCommandTest {
  private static final Path PAGE = Path.of("src/docs/importing.md");
  private static final Path SEALED = Path.of("fixtures/sealed");
  private static final Path TRUSTED = SEALED.resolve("key.jwk");
  private static final Pattern ROW =
      Pattern.compile("(?m)^\\| `(\\w+)` \\| ([a-z ]+?)(?:, `([^`]+)`)? \\| ([^|]+) \\|$");

  @TempDir private Path folder;
  private ExportedResults here;

  @BeforeEach
  void empty() throws Exception {
    here = new ExportedResults(folder);
  }

  private CommandRun check(Path file, Object... more) {
    List<Object> args = new ArrayList<>(List.of("import-check", "--key", here.key, file));
    args.addAll(List.of(more));
    return CommandRun.of(args.toArray());
  }

  @Test
  void aSoundResultIsPrintedFlat() throws Exception {
    Path file = SEALED.resolve("results/2026/20260302T071509Z_DEMO-1_pass_77e124f5.json");

    CommandRun run = check(file, "--trust", TRUSTED);

    assertThat(run.code()).as(run.err()).isZero();
    assertThat(run.err()).isEmpty();
    // As they stand in that file, and the digest as the next document names it.
    assertThat(run.out().lines())
        .contains(
            "id=77e124f5-5785-85bd-9264-da0de2d19bad",
            "verdict=pass",
            "counts=true",
            "rise_time_s=8.1729",
            "rise_time_expanded_s=0.505",
            "maximum_vacuum_kpa=89.1162",
            "document_sha256=7c65a930d348f8379e3bf1e64dd33de2387fd3c683eb925216b822621ffb8188");
  }

  @Test
  void theJsonHasTheSameKeysAsTheExport() throws Exception {
    Path file = here.store(1, "SP-1");

    assertThat(check(file, "--json").out()).isEqualTo(here.export("--as", "jsonl").out());
  }

  @ParameterizedTest
  @CsvSource({
    "digit.json,         1, broken seal",
    "verdict.json,       1, broken seal",
    "asset.json,         1, broken seal",
    "cut-signature.json, 1, broken seal",
    "alg-none.json,      1, broken seal",
    "alg-hs256.json,     1, broken seal",
    "unknown-crit.json,  1, broken seal",
    "borrowed-name.json, 1, broken seal",
    "stranger.json,      1, unknown key",
    "two-verdicts.json,  2, Duplicate",
  })
  void forgeriesAreRefused(String name, int code, String why) {
    CommandRun run =
        check(SEALED.resolve("tampered").resolve(name), "--trust", TRUSTED, "--without-capture");

    assertThat(run.code()).isEqualTo(code);
    assertThat(run.out()).isEmpty();
    assertThat(run.err()).contains(why).hasLineCount(1);
  }

  @Test
  void aRecordingThatIsMissingOrAnotherIsRefused() throws Exception {
    Path file = here.store(1, "SP-1");
    Path alone = Files.copy(file, folder.resolve("alone.json"));
    Path capture = Path.of(file.toString().replace(".json", ".log"));

    assertThat(check(alone).code()).isEqualTo(1);
    assertThat(check(alone).err()).contains("its recording is not beside it");
    assertThat(check(alone, "--without-capture").code()).isZero();
    Files.writeString(capture, "#1");
    assertThat(check(file, "--without-capture").code()).isEqualTo(1);
    assertThat(check(file).err()).contains("is not the one that was sealed");
  }

  @Test
  void whatIsNotKnownIsRefused() throws Exception {
    ObjectNode later = ExampleDocument.unsealed(1);
    later.put("schema", "thumbseal-result/2");
    ObjectNode other = ExampleDocument.unsealed(2);
    other.put("kind", "leak-search");

    assertThat(check(here.store(later)).err()).contains("schema is 'thumbseal-result/2'");
    assertThat(check(here.store(other)).err()).contains("kind is 'leak-search'");
    assertThat(check(here.store(later)).code()).isEqualTo(1);
    assertThat(check(folder.resolve("none.json")).code()).isEqualTo(2);
  }

  @Test
  void aCorrectionIsAppliedAndToldAndIsNoResultItself() throws Exception {
    Path file = here.store(1, "SP-1");
    here.amend(file, "--asset", "SP-2");

    CommandRun run = check(file);

    assertThat(run.out()).contains("asset_id=SP-2\n", "sealed_asset_id=SP-1\n", "corrections=1\n");
    assertThat(run.err()).contains("asset SP-1 -> SP-2");
    Path correction = only(file.resolveSibling("."), ".*_correction_.*");
    assertThat(check(correction).code()).isEqualTo(1);
    assertThat(check(correction).err()).contains("is a correction", file.getFileName().toString());
  }

  private static Path only(Path folder, String name) throws Exception {
    try (var files = Files.list(folder)) {
      return files.filter(f -> f.getFileName().toString().matches(name)).findAny().orElseThrow();
    }
  }

  /** The statements of the page, in SQLite itself. */
  @Test
  void theSqlOfThePageTakesATestOnceAndItsCorrectionsAfterwards() throws Exception {
    Path first = here.store(1, "SP-1");
    here.store(2, "SP-2");
    try (Connection base = DriverManager.getConnection("jdbc:sqlite::memory:")) {
      take(base, here.export("--as", "jsonl").out());
      List<String> once = rows(base);
      take(base, here.export("--as", "jsonl").out());
      assertThat(rows(base)).isEqualTo(once).hasSize(2);

      String before = check(first, "--json").out();
      here.amend(first, "--asset", "SP-9");
      here.amend(first, "--void", "--reason", "wrong hose");
      take(base, check(first, "--json").out());
      take(base, before);
      assertThat(rows(base)).containsExactly("SP-9 pass 0 2 7.42", "SP-2 pass 1 0 7.42");
    }
  }

  /** Graded anew under the same id: the first stands. */
  @Test
  void theSqlOfThePageKeepsTheFirstDocumentOfATest() throws Exception {
    String line = check(here.store(1, "SP-1"), "--json").out();
    try (Connection base = DriverManager.getConnection("jdbc:sqlite::memory:")) {
      take(base, line);
      take(
          base,
          line.replace("\"corrections\":0", "\"corrections\":3")
              .replaceAll("\"document_sha256\":\"..", "\"document_sha256\":\"zz"));
      assertThat(rows(base)).containsExactly("SP-1 pass 1 0 7.42");
    }
  }

  private static void take(Connection base, String lines) throws Exception {
    String[] statements = block("sql").split(";\\s*\n");
    assertThat(statements).hasSize(2);
    try (var create = base.createStatement()) {
      create.execute(statements[0]);
    }
    for (String line : lines.lines().toList()) {
      try (var insert = base.prepareStatement(statements[1].replace(":line", "?"))) {
        insert.setString(1, line);
        insert.execute();
      }
    }
  }

  private static List<String> rows(Connection base) throws SQLException {
    List<String> rows = new ArrayList<>();
    try (var query = base.createStatement();
        var found =
            query.executeQuery(
                "SELECT asset_id, verdict, counts, corrections, rise_time_s FROM tests ORDER BY id")) {
      while (found.next()) {
        rows.add(
            String.join(
                " ",
                found.getString(1),
                found.getString(2),
                found.getString(3),
                found.getString(4),
                found.getString(5)));
      }
    }
    return rows;
  }

  @Test
  void theTableOfThePageIsThatOfTheProgram() throws Exception {
    List<String> page =
        ROW.matcher(Files.readString(PAGE))
            .results()
            .map(m -> m.group(1) + "|" + m.group(2) + "|" + m.group(3) + "|" + m.group(4))
            .toList();

    assertThat(page)
        .isEqualTo(
            Arrays.stream(Column.values())
                .map(
                    c ->
                        c.key()
                            + "|"
                            + c.kind().text()
                            + "|"
                            + (c.unit().isEmpty() ? null : c.unit())
                            + "|"
                            + c.meaning())
                .toList());
  }

  @Test
  void theMappingOfThePageIsFollowed() throws Exception {
    assertThat(Mapping.read(block("mapping").lines().toList()).fields())
        .extracting(f -> f.heading())
        .containsExactly("Pump", "Tested on", "Vacuum (kPa)", "Result", "Valid", "Source");
  }

  @Test
  void whatAColumnHoldsIsWhereItsUnitSays() throws Exception {
    Path file = here.store(1, "SP-1");
    ObjectNode line = Answer.to("import-check", "--json", "--key", here.key, file).onlyDocument();
    ObjectNode whole = JsonGate.read(file);

    assertThat(line.get("ambient_kpa")).isEqualTo(whole.at("/test/ambient/quantity/value"));
    assertThat(line.get("open_vacuum_expanded_kpa"))
        .isEqualTo(whole.at("/measurements/openVacuum/expandedUncertainty"));
    assertThat(line.get("findings").stringValue()).isEqualTo("worn-pump:0.08 leak:0.12");
    assertThat(line.get("reasons").stringValue()).isEqualTo("rise-in-time maximum-reached");
    assertThat(line.has("leak_rate_ml_min")).isFalse();
    assertThat(line.get("counts").booleanValue()).isTrue();
  }

  private static String block(String language) throws Exception {
    var block =
        Pattern.compile("(?s)```" + language + "\n(.*?)```").matcher(Files.readString(PAGE));
    assertThat(block.find()).isTrue();
    return block.group(1);
  }
}
