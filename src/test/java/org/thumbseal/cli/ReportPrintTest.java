package org.thumbseal.cli;

import static org.assertj.core.api.Assertions.assertThat;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.concurrent.TimeUnit;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import org.thumbseal.json.JsonGate;
import tools.jackson.databind.node.ArrayNode;
import tools.jackson.databind.node.ObjectNode;

/** A report as a browser prints it: one sheet of A4, from its first word to its last. */
@Timeout(180)
class ReportPrintTest {
  private static final Path FIXTURES = Path.of("fixtures", "captures");

  @TempDir private Path folder;

  private static String run(String... command) throws IOException, InterruptedException {
    Process process = new ProcessBuilder(command).redirectErrorStream(true).start();
    process.getOutputStream().close();
    String said = new String(process.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
    assertThat(process.waitFor(60, TimeUnit.SECONDS)).isTrue();
    return said;
  }

  private static boolean isInstalled(String program) {
    try {
      run(program, program.equals("chromium") ? "--version" : "-v");
      return true;
    } catch (IOException e) {
      return false;
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
      return false;
    }
  }

  private Path printed(Path document) throws Exception {
    assumeTrue(
        isInstalled("chromium") && isInstalled("pdfinfo") && isInstalled("pdftotext"),
        "Chromium or poppler-utils is not installed");
    assertThat(CommandRun.of("report", "--key", folder.resolve("k"), "-o", folder, document).code())
        .isZero();
    Path pdf = folder.resolve("printed.pdf");
    String page = document.getFileName().toString().replaceFirst("\\.(json|log)$", ".html");
    run(
        "chromium",
        "--headless",
        "--no-sandbox",
        "--disable-gpu",
        "--no-first-run",
        "--disable-background-networking",
        "--disable-component-update",
        "--disable-sync",
        "--user-data-dir=" + folder.resolve("profile"),
        "--print-to-pdf=" + pdf,
        folder.resolve(page).toUri().toString());
    return pdf;
  }

  private static void assertOneSheet(Path pdf) throws Exception {
    assertThat(run("pdfinfo", pdf.toString()).replaceAll(" +", " "))
        .contains("Pages: 1\n")
        .containsPattern("Page size: 59[45][.0-9]* x 84[12]");
    assertThat(run("pdftotext", "-layout", pdf.toString(), "-"))
        .contains("licensed practice", "Signature", "samples", "Maximum vacuum");
  }

  @ParameterizedTest
  @ValueSource(strings = {"sound", "leak", "slipped", "altitude", "no-vacuum"})
  void aReportIsOneSheet(String name) throws Exception {
    assertOneSheet(printed(FIXTURES.resolve(name + ".log")));
  }

  /** All that a person can say of a visit on the page, of a pump of which there is much to say. */
  @ParameterizedTest
  @CsvSource({
    "ok, ''",
    "replaced, 'G-12, 40 mm'",
    "not-ok, 'a long reason of somebody who writes what there is to be written'"
  })
  void soIsOneWithEveryCheck(String state, String reason) throws Exception {
    ObjectNode document = JsonGate.read(FIXTURES.resolve("leak.json"));
    ArrayNode checks = document.withArray("checks");
    for (String item : "cord gasket jar tubing filter overflow outside".split(" ", -1)) {
      checks.addObject().put("item", item).put("state", state).put("reason", reason);
    }
    Path file = folder.resolve("checks.json");
    Files.writeString(file, document.toString());
    Files.copy(FIXTURES.resolve("leak.log"), folder.resolve("leak.log"));

    assertOneSheet(printed(file));
  }

  /** Much longer texts than the program writes: what finds no room is counted, not cut off. */
  @ParameterizedTest
  @ValueSource(ints = {1, 5, 200})
  void soIsOneWithMoreToSayThanThereIsRoom(int times) throws Exception {
    ObjectNode document = JsonGate.read(FIXTURES.resolve("leak.json"));
    document.putObject("asset").put("id", "W".repeat(100));
    for (int i = 0; i < times; i++) {
      document
          .withArray("reasons")
          .addObject()
          .put("code", "near-limit")
          .put("text", "The vacuum is nearer to its limit than can be told apart. ".repeat(7));
      document.withArray("findings").add(document.at("/findings/0").deepCopy());
      document
          .withArray("checks")
          .addObject()
          .put("item", "filter")
          .put("state", "not-ok")
          .put("reason", "discoloured and wet from an overflow, none in the store");
    }
    Path file = folder.resolve("much.json");
    Files.writeString(file, document.toString());
    Files.copy(FIXTURES.resolve("leak.log"), folder.resolve("leak.log"));

    assertOneSheet(printed(file));
  }
}
