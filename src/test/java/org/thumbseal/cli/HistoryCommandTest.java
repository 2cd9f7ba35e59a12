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
import tools.jackson.databind.node.ObjectNode;

/** The commands {@code history} and {@code fleet} as they are typed. */
@Timeout(120)
class HistoryCommandTest {
  @TempDir private Path folder;
  private Path results;
  private Path key;

  @BeforeEach
  void sealedResults() {
    results = folder.resolve("results");
    key = folder.resolve("keys/k.pem");
    for (String name : List.of("sound", "leak")) {
      Path capture = Path.of("fixtures", "captures", name + ".log");
      CommandRun.of("replay", "--results", results, "--key", key, "--asset", "SP-" + name, capture);
    }
  }

  private Answer run(Object... args) {
    List<Object> all = new ArrayList<>(Arrays.asList(args));
    all.addAll(List.of("--results", results, "--key", key));
    return Answer.to(all.toArray());
  }

  @Test
  void aHistoryNamesEveryTestAndSaysThatTheyAreTooFew() {
    Answer answer = run("history", "SP-sound");

    assertThat(answer.err()).isEmpty();
    assertThat(answer.code()).isZero();
    assertThat(answer.out())
        .contains("SP-sound: tests so far", "PASS", "fewer than 6 visits")
        .doesNotContain("SP-leak");
  }

  @Test
  void programsGetTheSameAsOneObject() {
    ObjectNode document = run("history", "SP-leak", "--json").onlyDocument();

    assertThat(document.at("/asset").stringValue()).isEqualTo("SP-leak");
    assertThat(document.at("/tests/0/verdict").stringValue()).isEqualTo("fail");
    assertThat(document.at("/tests/0/maximumVacuum/unit").stringValue()).isEqualTo("kPa");
    assertThat(document.at("/courses/0/noTrend").stringValue()).isEqualTo("too-few");
  }

  @Test
  void aCorrectionIsShownAndCounts() throws Exception {
    Path document =
        new ResultFiles(results)
            .documents().stream()
                .filter(f -> f.toString().contains("SP-leak"))
                .findFirst()
                .orElseThrow();
    CommandRun.of("amend", document, "--void", "--reason", "wrong hose", "--key", key);

    assertThat(run("history", "SP-leak").out()).contains("VOID", "void: wrong hose");
  }

  @Test
  void aPageIsWrittenAndWrittenAnew() throws Exception {
    Path page = folder.resolve("sound.html");
    assertThat(run("history", "SP-sound", "-o", page).out().strip()).isEqualTo(page.toString());
    assertThat(run("history", "SP-sound", "-o", page).code()).isZero();
    assertThat(Files.readString(page)).contains("<h1>SP-sound: tests so far</h1>");

    Answer other = run("history", "SP-leak", "-o", page);
    assertThat(other.code()).isEqualTo(ExitCode.USAGE);
    assertThat(other.err()).contains("sound.html").hasLineCount(1);
  }

  @Test
  void theFleetHasThePumpThatFailedOnTop() {
    Answer answer = run("fleet");

    assertThat(answer.code()).isEqualTo(ExitCode.NOT_PASSED);
    assertThat(answer.out().lines().findFirst().orElseThrow()).startsWith("SP-leak");
    assertThat(answer.out()).contains("SP-sound", "1 failed");
  }

  @Test
  void theRegisterAddsThePumpsThatNobodyTested() throws Exception {
    Path register = folder.resolve("pumps.csv");
    Files.writeString(register, "id,location,status\nSP-new,Theatre,in-use\nSP-leak,Store,away\n");
    Answer answer = run("fleet", "--register", register);

    assertThat(answer.out()).contains("SP-new", "never tested", "Not in use.", "1 never judged");
    assertThat(run("history", "SP-new", "--register", register).code()).isZero();
    Path page = folder.resolve("new.html");
    run("history", "SP-new", "--register", register, "-o", page);
    assertThat(Files.readString(page))
        .contains("No result of this pump counts yet")
        .doesNotContain("<table", "class=\"key\"");
  }

  /** The captures are of 2 March 2026. */
  @Test
  void whatIsOverdueIsWhatTheRoundSays() throws Exception {
    Path register = folder.resolve("pumps.csv");
    Files.writeString(
        register, "id,interval_months,in_service\nSP-sound,3,2024-05-01\nSP-leak,1,2024-05-01\n");
    run("done", "SP-sound", "yearly-inspection", "--by", "A", "--on", "2025-05-20");
    run("done", "SP-sound", "sterilisation", "--by", "A", "--on", "2026-05-20");

    Answer good = run("fleet", "--register", register, "--on", "2026-05-20");
    assertThat(lineOf(good, "SP-sound")).contains("No concern.");
    assertThat(lineOf(good, "SP-leak")).contains("Failed", "no record of it");

    Answer neglected = run("fleet", "--register", register, "--on", "2026-05-21");
    assertThat(lineOf(neglected, "SP-sound"))
        .endsWith("Overdue: Inspection by technician (20 May 2026).");
    assertThat(neglected.out()).contains("1 good, other work overdue");

    Answer late = run("fleet", "--register", register, "--on", "2026-06-03");
    assertThat(lineOf(late, "SP-sound")).contains("Its test was due on 2 Jun 2026.");
  }

  @Test
  void whereNobodyRecordsOtherWorkNobodyIsToldThatItIsLate() {
    Answer answer = run("fleet", "--on", "2026-03-20");
    assertThat(lineOf(answer, "SP-sound")).contains("No concern.");
    assertThat(answer.out()).doesNotContain("no record");
  }

  @Test
  void aRepairIsMarkedOnTheFirstTestAfterIt() {
    run("done", "SP-leak", "repair", "--by", "A", "--on", "2026-03-02");
    Answer failed = run("fleet", "--on", "2026-03-20");
    assertThat(lineOf(failed, "SP-leak")).contains("Failed");
    assertThat(run("history", "SP-leak").out()).doesNotContain("repair");

    run("done", "SP-sound", "repair", "--by", "A", "--on", "2026-03-02");
    assertThat(run("history", "SP-sound").out()).contains("made good: repair");
  }

  private static String lineOf(Answer answer, String asset) {
    return answer.out().lines().filter(line -> line.startsWith(asset)).findFirst().orElseThrow();
  }

  @Test
  void mistakesGetOneLine() {
    Answer unknown = run("history", "SP-none");
    assertThat(unknown.code()).isEqualTo(ExitCode.USAGE);
    assertThat(unknown.err()).contains("SP-none: no test of such a pump").hasLineCount(1);

    Answer noPage = run("fleet", "-o", folder.resolve("fleet.txt"));
    assertThat(noPage.code()).isEqualTo(ExitCode.USAGE);
    assertThat(noPage.err()).contains("-o FILE.html").hasLineCount(1);

    Answer noFolder = Answer.to("fleet", "--key", key, "--results", folder.resolve("nowhere"));
    assertThat(noFolder.code()).isEqualTo(ExitCode.USAGE);
    assertThat(noFolder.err()).contains("no such directory").hasLineCount(1);
  }
}
