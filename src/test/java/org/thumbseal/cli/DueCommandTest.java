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
import org.thumbseal.archive.Archive;
import org.thumbseal.json.ExampleDocument;
import org.thumbseal.seal.KeyStore;
import org.thumbseal.seal.SigningKey;

/** The command {@code due} as it is typed, over really sealed documents. */
@Timeout(120)
class DueCommandTest {
  @TempDir private Path folder;
  private Path results;
  private Path key;
  private Path register;

  @BeforeEach
  void places() throws Exception {
    results = folder.resolve("results");
    key = folder.resolve("keys/k.pem");
    register = folder.resolve("pumps.csv");
    SigningKey signing = KeyStore.create(key).key();
    try (Archive archive = Archive.open(results, signing)) {
      archive.store(ExampleDocument.unsealed(1), new byte[] {'#'});
    }
    Files.writeString(
        register,
        """
        id,description,location,in_service,status
        SP-014,mains 2 L,Ward 10,2025-01-01,in-use
        SP-015,mains 1 L,Ward 2,2026-03-20,in-use
        SP-016,mains 1 L,Ward 2,2025-01-01,retired
        """);
  }

  private CommandRun run(String command, Object... args) {
    List<Object> all = new ArrayList<>(List.of(command));
    all.addAll(List.of(args));
    all.addAll(List.of("--results", results, "--key", key));
    return CommandRun.of(all.toArray());
  }

  @Test
  void goesPlaceByPlaceAndLeavesRetiredPumpsAlone() {
    CommandRun run = run("due", "--register", register, "--on", "2026-03-16");
    assertThat(run.err()).isEmpty();
    assertThat(run.code()).isEqualTo(1);
    assertThat(run.out()).contains("SP-014  mains 2 L").contains("SP-015").doesNotContain("SP-016");
    assertThat(run.out().indexOf("Ward 2\n")).isLessThan(run.out().indexOf("Ward 10\n"));
    assertThat(run.out()).contains("no record of it");
  }

  @Test
  void whatWasDoneIsDueLater() {
    run("done", "SP-014", "sterilisation", "--by", "A", "--on", "2026-03-10");
    run("done", "SP-014", "yearly-inspection", "--by", "A", "--on", "2026-03-10");
    CommandRun run = run("due", "--on", "2026-03-16", "--json");
    assertThat(run.out())
        .contains(
            "{\"asset\":\"SP-014\",\"cause\":\"term\",\"due\":\"2026-04-10\",\"last\":\"2026-03-10\","
                + "\"urgency\":\"this-month\",\"work\":\"sterilisation\"}")
        .contains("\"due\":\"2027-03-10\"");
  }

  @Test
  void aDayThatIsOverIsSeenAsItWas() throws Exception {
    SigningKey signing = KeyStore.load(key).key();
    try (Archive archive = Archive.open(results, signing)) {
      archive.store(ExampleDocument.unsealed(60 * 24 * 40), new byte[] {'#'});
    }
    run("done", "SP-014", "sterilisation", "--by", "A", "--on", "2026-03-10");
    run("done", "SP-014", "sterilisation", "--by", "A", "--on", "2026-04-10");
    CommandRun run = run("due", "--on", "2026-03-16", "--json");
    assertThat(run.out())
        .contains("\"last\":\"2026-03-02\",\"urgency\":\"this-month\",\"work\":\"occlusion-test\"")
        .contains("\"last\":\"2026-03-10\",\"urgency\":\"this-month\",\"work\":\"sterilisation\"");
  }

  @Test
  void writesAPageAndACalendarAndReplacesThem() throws Exception {
    Path page = folder.resolve("round.html");
    Path calendar = folder.resolve("due.ics");
    for (String day : List.of("2026-03-16", "2026-03-17")) {
      CommandRun run =
          run("due", "--register", register, "-o", page, "--calendar", calendar, "--on", day);
      assertThat(run.err()).isEqualTo(page + "\n" + calendar + "\n");
      assertThat(run.out()).isEmpty();
      assertThat(Files.readString(page)).contains("What is due on " + day);
    }
    assertThat(Files.readString(calendar)).startsWith("BEGIN:VCALENDAR");
    Path strange = Files.writeString(folder.resolve("notes.ics"), "mine");
    CommandRun refused = run("due", "--calendar", strange);
    assertThat(refused.code()).isEqualTo(2);
    assertThat(Files.readString(strange)).isEqualTo("mine");
  }

  @Test
  void mistakesAreOneLine() {
    CommandRun date = run("due", "--on", "16.3.2026");
    assertThat(date.err())
        .isEqualTo("thumbseal: --on: '16.3.2026' is no date; write it as 2027-11-25\n");
    assertThat(date.code()).isEqualTo(2);
    CommandRun none = CommandRun.of("due", "--results", folder.resolve("none"), "--key", key);
    assertThat(none.err()).contains("there is no such directory").hasLineCount(1);
    assertThat(none.code()).isEqualTo(2);
  }
}
