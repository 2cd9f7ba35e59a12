package org.thumbseal.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Objects;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;

/** The command {@code report} as it is typed. */
@Timeout(120)
class ReportCommandTest {
  private static final Path FIXTURES = Path.of("fixtures", "captures");

  @TempDir private Path folder;
  private Path results;
  private Path key;
  private Path pages;
  private Path sound;

  @BeforeEach
  void sealedResults() throws Exception {
    results = folder.resolve("results");
    key = folder.resolve("keys/k.pem");
    pages = folder.resolve("pages");
    for (String name : List.of("sound", "leak")) {
      CommandRun.of(
          "replay",
          "--results",
          results,
          "--key",
          key,
          "--asset",
          "SP-" + name,
          FIXTURES.resolve(name + ".log"));
    }
    sound = document("_SP-sound_");
  }

  private Path document(String part) throws Exception {
    return new ResultFiles(results)
        .documents().stream().filter(f -> f.toString().contains(part)).findFirst().orElseThrow();
  }

  private CommandRun report(Object... args) {
    List<Object> all = new ArrayList<>(List.of("report", "--key", key, "-o", pages));
    all.addAll(Arrays.asList(args));
    return CommandRun.of(all.toArray());
  }

  private String page(String name) throws Exception {
    return Files.readString(pages.resolve(name), StandardCharsets.UTF_8);
  }

  private String soundPage() throws Exception {
    return page(sound.getFileName().toString().replace(".json", ".html"));
  }

  private void assertOneLine(CommandRun run, int code, String part) {
    assertThat(run.err()).startsWith("thumbseal: ").contains(part).hasLineCount(1);
    assertThat(run.code()).isEqualTo(code);
  }

  @Test
  void aSealedResultGetsItsPage() throws Exception {
    CommandRun run = report(sound);

    assertThat(run.err()).isEmpty();
    assertThat(run.code()).isZero();
    assertThat(run.out().strip()).endsWith(".html").startsWith(pages.toString());
    assertThat(soundPage()).contains("<h1>PASS</h1>", "SP-sound", "Seal good.", "class=\"curve\"");
  }

  @Test
  void aStrangerIsToldFromAKeyThatIsTrusted() throws Exception {
    CommandRun run =
        CommandRun.of("report", "--key", folder.resolve("other.pem"), "-o", pages, sound);

    assertThat(run.code()).isZero();
    assertThat(soundPage()).contains("Seal intact, by an unknown key.");
  }

  @Test
  void whatStandsNowIsShown() throws Exception {
    CommandRun.of("amend", sound, "--asset", "SP-777", "--key", key);
    report(sound);
    assertThat(soundPage()).contains("<p class=\"asset\">SP-777</p>", "<h1>PASS</h1>");

    CommandRun.of("amend", sound, "--void", "--reason", "hose of another", "--key", key);
    CommandRun run = report(sound);

    assertThat(run.code()).isZero();
    assertThat(soundPage())
        .contains("<h1>VOID</h1>", "THIS RESULT DOES NOT COUNT.", "It was PASS", "hose of another");
  }

  @Test
  void aCaptureThatIsMissingOrAlteredIsSaidInThePlaceOfTheCurve() throws Exception {
    Path capture = ResultFiles.capture(sound);
    byte[] bytes = Files.readAllBytes(capture);
    Files.delete(capture);
    assertOneLine(report(sound), 1, "its capture is not beside it; the page says so");
    assertThat(soundPage()).contains("its capture is not beside it", "7.50", "Seal good.");
    assertThat(soundPage()).doesNotContain("class=\"curve\" d=");

    Files.write(capture, Arrays.copyOf(bytes, bytes.length - 30));
    assertOneLine(report(sound), 1, "is not the one that was sealed");
    assertThat(soundPage()).contains("SEAL BROKEN.", "is not the one that was sealed");
  }

  @Test
  void anAlteredDocumentIsCalledSo() throws Exception {
    String text = Files.readString(sound).replace("SP-sound", "SP-other");
    Files.writeString(sound, text);

    assertOneLine(report(sound), 1, "the content is not what was signed");
    assertThat(soundPage()).contains("SEAL BROKEN.", "SP-other");
  }

  @Test
  void whatReplayPrintedAndCapturesAreNotSealed() throws Exception {
    CommandRun printed = CommandRun.of("replay", "--json", FIXTURES.resolve("two-tests.log"));
    Path json = folder.resolve("two-tests.json");
    Files.writeString(json, printed.out());
    Files.copy(FIXTURES.resolve("two-tests.log"), folder.resolve("two-tests.log"));

    assertThat(report(json).err()).isEmpty();
    String first = page("two-tests-1.html");
    assertThat(first).contains("Not sealed.", "class=\"curve\" d=");
    assertThat(page("two-tests-2.html")).isNotEqualTo(first);

    CommandRun graded = report(folder.resolve("two-tests.log"));
    assertThat(graded.code()).isZero();
    assertThat(page("two-tests-1.html")).isEqualTo(first);
  }

  @Test
  void nobodysFileIsOverwritten() throws Exception {
    Files.createDirectories(pages);
    Path taken = pages.resolve(sound.getFileName().toString().replace(".json", ".html"));
    Files.writeString(taken, "<html>my own notes</html>");

    assertOneLine(report(sound), 2, "is there, and is no report of this result");
    assertThat(taken).hasContent("<html>my own notes</html>");
    Files.delete(taken);
    assertThat(report(sound).code()).isZero();
    assertThat(report(sound).code()).isZero();
    assertThat(pages).isDirectoryNotContaining(file -> !file.equals(taken));
  }

  @Test
  void aFolderGetsAnIndex() throws Exception {
    CommandRun.of("amend", sound, "--void", "--reason", "hose of another", "--key", key);

    CommandRun run = report(results);

    assertThat(run.err()).isEmpty();
    assertThat(run.out().strip()).isEqualTo(pages.resolve("index.html").toString());
    assertThat(new ResultFiles(pages).files(".html")).hasSize(3);
    assertThat(page("index.html"))
        .contains("data-pump=\"SP-sound\"", "<li class=\"void\"", "<li class=\"fail\"")
        .contains("script-src &#39;sha256-");
    assertThat(page("index.html").split("class=\"small\"", -1)).hasSize(3);
  }

  /** An index of one page; what an older and longer one left is removed, and nothing else. */
  @Test
  void pagesOfALongerIndexAreRemoved() throws Exception {
    report(results, "--index-only");
    String ours = page("index.html");
    for (String name :
        List.of("index-2.html", "index-12.html", "index-02.html", "my-index-2.html")) {
      Files.writeString(pages.resolve(name), ours);
    }
    Files.writeString(pages.resolve("index-3.html"), "<html>my own notes</html>");
    Files.writeString(
        pages.resolve("index-4.html"), ours.replace("index of results", "index of others"));
    Files.createSymbolicLink(pages.resolve("index-5.html"), pages.resolve("index.html"));

    CommandRun run = report(results, "--index-only");

    assertThat(run.err()).isEmpty();
    assertThat(pages.toFile().list())
        .containsExactlyInAnyOrder(
            "index.html",
            "index-02.html",
            "index-3.html",
            "index-4.html",
            "index-5.html",
            "my-index-2.html");
  }

  @Test
  void ofAFolderAPumpAndATimeCanBeChosen() throws Exception {
    assertThat(report(results, "--asset", "SP-leak", "--index-only").code()).isZero();
    assertThat(page("index.html")).contains("SP-leak").doesNotContain("SP-sound", "<a href");
    assertThat(new ResultFiles(pages).files(".html")).hasSize(1);

    assertOneLine(report(results, "--from", "2026-03-03"), 1, "no result here is of that pump");
  }

  @Test
  void curveAndSamplesAlone() throws Exception {
    report(sound, "--svg");
    report(sound, "--csv");

    String stem = sound.getFileName().toString().replace(".json", "");
    assertThat(page(stem + ".svg")).startsWith("<?xml").contains("class=\"rise-limit\"");
    assertThat(page(stem + ".csv")).startsWith("time_since_blocking_s,vacuum_kPa,phase\r\n");
  }

  @Test
  void mistakesGetOneLine() throws Exception {
    assertOneLine(report(folder.resolve("none.json")), 2, "no such file");
    assertOneLine(CommandRun.of("report", results, "--key", key), 2, "with -o DIR");
    assertOneLine(report(Objects.requireNonNull(key.getParent())), 2, "holds no results");
    assertOneLine(report(sound, "--index-only"), 2, "--index-only is for");
    assertOneLine(report(FIXTURES.resolve("no-test.log")), 1, "no test in it");
    CommandRun.of("amend", sound, "--asset", "SP-777", "--key", key);
    assertOneLine(report(document("_correction_")), 2, "is not the result of a test");
    Path file = Files.writeString(folder.resolve("a-file"), "x");
    assertOneLine(
        CommandRun.of("report", "--key", key, sound, "-o", file), 2, "is a file; name a folder");
    Path meant = folder.resolve("sound.html");
    assertOneLine(
        CommandRun.of("report", "--key", key, sound, "-o", meant), 2, "-o names a folder");
    assertThat(meant).doesNotExist();
    assertOneLine(report(results, folder), 2, "one folder at a time");
    assertThat(pages.resolve("index.html")).doesNotExist();
    assertOneLine(report(file), 2, "is not JSON");
  }
}
