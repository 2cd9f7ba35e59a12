package org.thumbseal.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.thumbseal.json.Canonical;
import org.thumbseal.json.Json;
import tools.jackson.databind.node.ObjectNode;

/** The command {@code seek-leak} as it is typed, on the lines of a simulated suction path. */
@Timeout(120)
class SeekLeakCommandTest {
  @TempDir private Path folder;
  private Path results;
  private Path key;

  @BeforeEach
  void places() {
    results = folder.resolve("results");
    key = folder.resolve("keys/k.pem");
  }

  private CommandRun seek(Object... args) {
    List<Object> all = new ArrayList<>(List.of("seek-leak", "SP-014"));
    all.addAll(List.of(args));
    all.addAll(List.of("--results", results, "--key", key));
    return CommandRun.of(all.toArray());
  }

  private String port(int station) throws Exception {
    return "file:" + SuctionLineFile.write(folder.resolve("lines"), station);
  }

  /** At the jar inlet, whatever ends there, and at the jar outlet, taken up again. */
  private CommandRun searched(Object... args) throws Exception {
    List<Object> first = new ArrayList<>(List.of(args));
    first.addAll(List.of("--port", port(1)));
    assertThat(seek(first.toArray()).code()).isEqualTo(1);
    List<Object> second = new ArrayList<>(List.of(args));
    second.addAll(List.of("--from", "2=" + documents("unassigned").get(0), "--port", port(2)));
    return seek(second.toArray());
  }

  private List<Path> documents(String kind) throws Exception {
    return new ResultFiles(results)
        .documents().stream()
            .filter(file -> file.getFileName().toString().contains("_" + kind + "_"))
            .toList();
  }

  private Path search() throws Exception {
    List<Path> found = documents("leak-search");
    assertThat(found).hasSize(1);
    return found.get(0);
  }

  @Test
  void aLeakingJarIsFoundLiveSealedAndVerified() throws Exception {
    CommandRun run = searched("--jar-l", SuctionLineFile.litres(), "--by", "A. Nurse");
    assertThat(run.code()).as(run.out() + run.err()).isEqualTo(1);
    assertThat(run.out())
        .contains("Gloves.")
        .contains("next: block at: jar outlet")
        .contains("SP-014: The jar with its lid gasket takes")
        .contains("lid gasket, renew it");
    ObjectNode document = ResultFiles.read(search());
    assertThat(document.at("/conclusion/code").stringValue()).isEqualTo("section-leaks");
    assertThat(document.at("/tests")).hasSize(2);
    double leak = document.at("/sections/0/leak/value").doubleValue();
    assertThat(leak)
        .as("4 L/min leak in")
        .isBetween(
            4_000 - document.at("/sections/0/leak/expandedUncertainty").doubleValue(),
            4_000 + document.at("/sections/0/leak/expandedUncertainty").doubleValue());
    CommandRun verify = CommandRun.of("verify", results, "--key", key);
    assertThat(verify.code()).as(verify.out()).isZero();
  }

  /** A test without the jar must not count as the pump's monthly one. */
  @Test
  void theTestsBearNeitherPumpNorJar() throws Exception {
    searched("--jar-l", SuctionLineFile.litres());
    List<Path> tests =
        new ResultFiles(results)
            .documents().stream().filter(f -> f.toString().contains("unassigned")).toList();
    assertThat(tests).hasSize(2);
    for (Path test : tests) {
      assertThat(ResultFiles.read(test).has("asset")).isFalse();
      assertThat(ResultFiles.read(test).at("/test").has("jar")).isFalse();
    }
  }

  /** They say whose leak was sought, and the stored capture says it again. */
  @Test
  void aReplayOfATestGivesTheSameDocument() throws Exception {
    searched();
    Path test = documents("unassigned").get(0);
    ObjectNode sealed = ResultFiles.read(test);
    assertThat(sealed.at("/test/leakSearch").stringValue()).isEqualTo("SP-014");
    CommandRun replay =
        CommandRun.of("replay", test.toString().replaceFirst("json$", "log"), "--json");
    ObjectNode again = (ObjectNode) Json.mapper().readTree(replay.out());
    sealed.remove(List.of("ledger", "signature"));
    assertThat(Canonical.text(again)).isEqualTo(Canonical.text(sealed));
  }

  /** Whoever corrects the pump of such a test does not make it its monthly one. */
  @Test
  void aTestThatIsCalledThePumpsLaterIsStillNoMonthlyOne() throws Exception {
    searched();
    Path test = documents("unassigned").get(0);
    CommandRun amend = CommandRun.of("amend", test, "--asset", "SP-014", "--key", key);
    assertThat(amend.code()).as(amend.err()).isZero();
    assertThat(onResults("history", "SP-014").out())
        .contains("VOID", "part of the leak search of SP-014");
    Path register = Files.writeString(folder.resolve("r.csv"), "id\nSP-014\n");
    assertThat(onResults("due", "--register", register).out())
        .contains("SP-014", "no record of it")
        .doesNotContain("last on");
    List<String> rows = onResults("export").out().lines().toList();
    assertThat(rows).hasSize(3);
    assertThat(rows.get(0)).endsWith(",leak_search_of");
    assertThat(rows.subList(1, 3)).allMatch(row -> row.endsWith(",SP-014"));
    assertThat(rows.subList(1, 3)).allMatch(row -> row.contains(",false,"));
  }

  private CommandRun onResults(Object... args) {
    List<Object> all = new ArrayList<>(List.of(args));
    all.addAll(args[0].equals("export") ? List.of(results) : List.of("--results", results));
    all.addAll(List.of("--key", key));
    return CommandRun.of(all.toArray());
  }

  @Test
  void whatEndedBeforeItWasFinishedIsTakenUpAgain() throws Exception {
    CommandRun first = seek("--port", port(1), "--by", "A. Miller");
    assertThat(first.code()).isEqualTo(1);
    assertThat(first.out()).contains("next: block at: jar inlet");
    Path jarInlet = documents("unassigned").get(0);
    assertThat(first.err())
        .endsWith(
            "the search is not finished; go on with: thumbseal seek-leak SP-014 --from 2="
                + jarInlet
                + " --by 'A. Miller' --results "
                + results
                + " --key "
                + key
                + " --port P\n");
    CommandRun second = seek("--from", "2=" + jarInlet, "--port", port(2), "--json");
    assertThat(second.code()).as(second.err()).isEqualTo(1);
    assertThat(second.out()).hasLineCount(1).contains("\"code\":\"section-leaks\"");
    assertThat(ResultFiles.read(search()).at("/tests")).hasSize(2);
  }

  @Test
  void theSameTestsAgainAreTheSameSearch() throws Exception {
    searched();
    CommandRun again = seek("--from", results);
    assertThat(again.code()).as(again.err()).isEqualTo(1);
    assertThat(again.out()).contains("The jar with its lid gasket takes");
    search();
  }

  @Test
  void aSearchCanBeVoidedAndIndexed() throws Exception {
    searched("--by", "A. Nurse");
    CommandRun add = CommandRun.of("records", "add", "--results", results, "--key", key);
    assertThat(add.code()).as(add.err()).isZero();
    CommandRun show = CommandRun.of("records", "show", "--results", results, "--key", key);
    assertThat(show.out()).contains("leak-search").contains("0  kept out");
    CommandRun amend =
        CommandRun.of("amend", search(), "--void", "--reason", "hose loose", "--key", key);
    assertThat(amend.code()).as(amend.err()).isZero();
    CommandRun verify = CommandRun.of("verify", results, "--key", key);
    assertThat(verify.code()).as(verify.out()).isZero();
  }

  @Test
  void stationsHaveTheNamesThatAreGivenThem() throws Exception {
    Path names =
        Files.writeString(
            folder.resolve("stations.txt"),
            "# our own\nhandpiece; tube; 20\n* lid nipple; glass; 60\nafter glass; rest\n");
    CommandRun run = searched("--stations", names);
    assertThat(run.out()).contains("block at the after glass").contains("SP-014: Glass takes");
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "a; b | put a * before the jar inlet",
        "* a; b | there must be 2 to 10 stations, not 1",
        "a; b\\n* c; d | the jar inlet must be one of the stations before the last",
        "* a; b\\na; c | the station 'a' is there twice",
        "* a | line 1: write it as: station; what lies between it and the next; share",
        "* a; b; 101 | line 1: the share of 'b' must be 1 to 100, not 101",
        "* a; b; x | line 1: the share must be a whole number, 1 to 100",
        "* a; b\\n* c; d | line 2: a second * : there is one jar inlet",
      })
  void aMistakeInTheStationsIsOneLine(String text, String message) throws Exception {
    Path names = Files.writeString(folder.resolve("s.txt"), text.replace("\\n", "\n"));
    assertRefused(message, seek("--port", "sim:sound", "--stations", names));
    Object[] watch = {
      "watch", "--port", "sim:sound", "--stations", names, "--results", results, "--key", key
    };
    assertRefused(message, CommandRun.of(watch));
  }

  private void assertRefused(String message, CommandRun run) {
    assertThat(run.code()).isEqualTo(2);
    assertThat(run.err()).hasLineCount(1).contains(message);
    assertThat(results).doesNotExist();
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "--jar-l 90|--jar-l must be between 0.05 and 50, not 90",
        "--from nowhere.json|--from nowhere.json: ",
        "--from 7=x.json|--from 7=x.json: there are 5 stations",
        "--by ' '|--by must be 1 to 100 plain characters",
      })
  void aMistakeIsOneLineAndNothingIsWritten(String options, String message) {
    CommandRun run =
        seek((Object[]) ("--port sim:sound " + options.replace("' '", "\t")).split(" ", -1));
    assertRefused(message, run);
  }

  @Test
  void somethingMustBeThereToSearchWith() {
    assertThat(seek().err()).contains("say where the sensor is: --port P; or name sealed results");
  }

  @Test
  void aTestOfTheSearchOfAnotherPumpIsRefused() throws Exception {
    seek("--port", port(1));
    Object from = documents("unassigned").get(0);
    CommandRun run =
        CommandRun.of("seek-leak", "SP-9", "--from", from, "--results", results, "--key", key);
    assertThat(run.code()).isEqualTo(2);
    assertThat(run.err()).contains("is of the leak search of another pump, SP-014");
  }

  @Test
  void aTestOfAnotherPumpIsRefused() throws Exception {
    CommandRun.of(
        "watch", "--port", port(1), "--asset", "SP-9", "--results", results, "--key", key);
    Path other = documents("SP-9_fail").get(0);
    CommandRun run = seek("--from", other);
    assertThat(run.code()).isEqualTo(2);
    assertThat(run.err()).contains("is of another pump, SP-9");
  }
}
