package org.thumbseal.cli;

import static org.assertj.core.api.Assertions.assertThat;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.concurrent.TimeUnit;

/**
 * A page as a browser prints it.
 *
 * @param pdf what was printed
 */
record PrintedPage(Path pdf) {
  /** Prints it; the test is skipped where Chromium or poppler-utils is not installed. */
  static PrintedPage of(Path page) throws Exception {
    assumeTrue(
        isInstalled("chromium", "--version")
            && isInstalled("pdfinfo", "-v")
            && isInstalled("pdftotext", "-v"),
        "Chromium or poppler-utils is not installed");
    Path pdf = page.resolveSibling(page.getFileName() + ".pdf");
    run(
        "chromium",
        "--headless",
        "--no-sandbox",
        "--disable-gpu",
        "--no-first-run",
        "--disable-background-networking",
        "--disable-component-update",
        "--disable-sync",
        "--user-data-dir=" + page.resolveSibling("profile"),
        "--print-to-pdf=" + pdf,
        page.toUri().toString());
    return new PrintedPage(pdf);
  }

  private static String run(String... command) throws IOException, InterruptedException {
    Process process = new ProcessBuilder(command).redirectErrorStream(true).start();
    process.getOutputStream().close();
    String said = new String(process.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
    assertThat(process.waitFor(60, TimeUnit.SECONDS)).isTrue();
    return said;
  }

  private static boolean isInstalled(String program, String question) {
    try {
      run(program, question);
      return true;
    } catch (IOException e) {
      return false;
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
      return false;
    }
  }

  /** How many sheets; each must be A4. */
  int sheets() throws Exception {
    String info = run("pdfinfo", pdf.toString()).replaceAll(" +", " ");
    assertThat(info).containsPattern("Page size: 59[45][.0-9]* x 84[12]");
    return Integer.parseInt(info.replaceAll("(?s).*Pages: (\\d+).*", "$1"));
  }

  /** All words on it, in lines as they stand. */
  String text() throws Exception {
    return run("pdftotext", "-layout", pdf.toString(), "-");
  }
}
