package org.thumbseal.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.CompletableFuture;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.condition.EnabledOnOs;
import org.junit.jupiter.api.condition.OS;
import org.junit.jupiter.api.io.TempDir;
import org.openqa.selenium.Keys;
import org.thumbseal.link.PtyPair;
import tools.jackson.databind.JsonNode;

/** The page of the bench before a person's eyes: a real browser, a real daemon, a real line. */
@Timeout(180)
@EnabledOnOs(value = OS.LINUX, disabledReason = "skipped: pseudo-terminals of socat are for Linux")
class BenchPageTest {
  /** Time to read the page, and to take pictures of it. */
  private static final QuickPump.Waits UNHURRIED = new QuickPump.Waits(7, 7, 12);

  @TempDir private Path folder;

  private ProgramProcess watch(PtyPair pair, String... page) throws IOException {
    List<Object> args = new ArrayList<>(List.of("watch", "--port", pair.port()));
    args.addAll(List.of("--results", folder.resolve("results")));
    args.addAll(List.of("--key", folder.resolve("keys/k.pem")));
    args.addAll(List.of(page));
    return ProgramProcess.start(folder, args.toArray());
  }

  private Browser browse(String url) {
    return Browser.at(url, folder.resolve("profile"));
  }

  @Test
  void aWholeTestByScannerAndKeyboard() throws Exception {
    ResultFiles files = new ResultFiles(folder.resolve("results"));
    try (PtyPair pair = PtyPair.in(folder);
        ProgramProcess watch = watch(pair);
        Browser browser = browse(watch.page().group(1))) {
      watch.awaitOpen(Path.of(pair.port()));
      CompletableFuture<Void> pump = speaking(pair, Double.POSITIVE_INFINITY);
      browser.awaitText("sentence", "Scan the pump’s number");
      browser.picture("1-scan");

      browser.type("(01)51022222233336(10)A213B1(21)1234" + Keys.ENTER);
      browser.awaitText("pump", "(01)51022222233336(21)1234");
      browser.type("SP-014" + Keys.ENTER);
      browser.awaitText("pump", "SP-014");
      browser.awaitText("sentence", "Press Start");
      look("2-press", browser);
      sayThatTheGasketIsSound(browser);
      startByKeyboard(browser);
      browser.awaitText("sentence", "Switch the pump on");
      browser.awaitText("hint", "s left");
      browser.picture("3-switch-on");

      browser.awaitText("sentence", "Block the jar inlet and hold");
      browser.picture("4-block");
      browser.awaitText("sentence", "Hold");
      browser.picture("5-hold");
      browser.awaitText("sentence", "Let go");
      browser.picture("6-let-go");
      browser.awaitText("sentence", "Switch the pump off");
      browser.awaitText("word", "PASS");
      browser.awaitText("sealed", "Sealed: ");
      assertThat(browser.text("visit")).startsWith("This visit has ended.");
      assertThat(browser.text("unassigned")).isEmpty();
      look("7-pass", browser);
      pump.get();

      JsonNode result = ResultFiles.read(files.documents().get(0));
      assertThat(result.at("/verdict").asString()).isEqualTo("pass");
      assertThat(result.at("/asset/id").asString()).isEqualTo("SP-014");
      assertThat(result.at("/test/start/by").asString()).isEqualTo("page");
      assertThat(result.at("/checks").toString())
          .contains("{\"item\":\"gasket\",\"state\":\"ok\"}", "\"item\":\"jar\"");
      // What the browser is made of itself comes from no network.
      assertThat(browser.asked().stream().filter(url -> !url.startsWith("chrome")))
          .isNotEmpty()
          .allMatch(url -> url.startsWith(watch.page().group(1)));
    }
  }

  private static CompletableFuture<Void> speaking(PtyPair pair, double until) {
    return CompletableFuture.runAsync(
        () -> {
          try {
            QuickPump.speak(pair, UNHURRIED, until);
          } catch (IOException e) {
            throw new UncheckedIOException(e);
          }
        });
  }

  private static void look(String name, Browser browser) throws IOException {
    browser.picture(name);
    assertThat(browser.barriers()).as(name).isEmpty();
  }

  private static void sayThatTheGasketIsSound(Browser browser) throws IOException {
    tabTo(browser, "open-checks");
    browser.type(Keys.ENTER);
    assertThat(browser.element("#checks").isDisplayed()).isTrue();
    // The first group is the cord; one more Tab is the gasket, whose last choice is set.
    browser.type(Keys.TAB);
    browser.type(Keys.ARROW_RIGHT);
    assertThat(browser.element("input[name=gasket][value=ok]").isSelected()).isTrue();
    browser.awaitText("open-checks", "Checks (1 of 7)");
    look("2-checks", browser);
    browser.type(Keys.ESCAPE);
    assertThat(browser.focus()).isEqualTo("open-checks");
  }

  private static void startByKeyboard(Browser browser) {
    tabTo(browser, "start");
    browser.type(Keys.ENTER);
  }

  private static void tabTo(Browser browser, String id) {
    for (int i = 0; i < 40 && !browser.focus().equals(id); i++) {
      browser.type(Keys.TAB);
    }
    assertThat(browser.focus()).isEqualTo(id);
  }

  @Test
  void thePumpsOfTheRegisterAreOfferedAndToldApart() throws Exception {
    Path register = folder.resolve("pumps.csv");
    Files.writeString(
        register, "id,description,location\nSP-014,trolley pump,Ward 3\nSP-021,<b>x</b>,\n");
    try (PtyPair pair = PtyPair.in(folder);
        ProgramProcess watch = watch(pair, "--register", register.toString());
        Browser browser = browse(watch.page().group(1))) {
      watch.awaitOpen(Path.of(pair.port()));
      QuickPump.speak(pair, 0.5);
      browser.awaitText("sentence", "Scan the pump’s number");
      assertThat(browser.element("#known option[value=SP-014]").getDomAttribute("label"))
          .isEqualTo("SP-014 · trolley pump · Ward 3");

      browser.type("SP-014" + Keys.ENTER);
      browser.awaitText("pump", "SP-014");
      browser.awaitText("about", "trolley pump · Ward 3");
      assertThat(browser.text("said")).isEqualTo("Pump SP-014");
      look("register", browser);
      browser.type("SP-021" + Keys.ENTER);
      browser.awaitText("about", "<b>x</b>");
      browser.type("SP-100" + Keys.ENTER);
      browser.awaitText("pump", "SP-100");
      browser.awaitText("said", "Pump SP-100 is not in the register. It is tested all the same.");
      assertThat(browser.text("about")).isEmpty();
      watch.awaitErr("SP-100 is not in the register");

      // A changed one is offered as soon as the next pump is named.
      Files.writeString(register, "id,location\nSP-100,Ward 9\n");
      browser.type("SP-014" + Keys.ENTER);
      browser.awaitText("said", "Pump SP-014");
      browser.type("SP-100" + Keys.ENTER);
      browser.awaitText("about", "Ward 9");
    }
  }

  @Test
  void aTestOfNoPumpSaysHowToNameItLater() throws Exception {
    ResultFiles files = new ResultFiles(folder.resolve("results"));
    try (PtyPair pair = PtyPair.in(folder);
        ProgramProcess watch = watch(pair);
        Browser browser = browse(watch.page().group(1))) {
      watch.awaitOpen(Path.of(pair.port()));
      CompletableFuture<Void> pump = speaking(pair, Double.POSITIVE_INFINITY);
      browser.awaitText("word", "PASS");
      browser.awaitText("sealed", "Sealed: ");
      String file = files.documents().get(0).getFileName().toString();
      assertThat(browser.text("unassigned")).contains("thumbseal amend " + file + " --asset");
      look("12-unassigned", browser);
      pump.get();

      browser.type("SP-015" + Keys.ENTER);
      browser.awaitText("pump", "SP-015");
      assertThat(browser.text("unassigned")).isEmpty();
    }
  }

  @Test
  void whatIsScannedAfterAMisreadCodeTakesItsPlace() throws Exception {
    try (PtyPair pair = PtyPair.in(folder);
        ProgramProcess watch = watch(pair);
        Browser browser = browse(watch.page().group(1))) {
      watch.awaitOpen(Path.of(pair.port()));
      QuickPump.speak(pair, 0.5);
      browser.awaitText("sentence", "Scan the pump’s number");
      browser.type("(01)51022222233337(21)1234" + Keys.ENTER);
      browser.awaitText("said", "check digit is wrong");
      browser.type("(01)51022222233336(21)1234" + Keys.ENTER);
      browser.awaitText("pump", "(01)51022222233336(21)1234");

      // The list on the page is of the pump on the bench, not of the one before.
      browser.element("#open-checks").click();
      browser.element("input[name=jar][value=ok]").click();
      browser.awaitText("open-checks", "Checks (1 of 7)");
      browser.type("SP-015" + Keys.ENTER);
      browser.awaitText("pump", "SP-015");
      browser.awaitText("open-checks", "Checks (0 of 7)");
      assertThat(browser.element("input[name=jar][value=not-checked]").isSelected()).isTrue();
    }
  }

  @Test
  void anAnswerStandsWhenTheSensorIsPulled() throws Exception {
    try (PtyPair pair = PtyPair.in(folder);
        ProgramProcess watch = watch(pair);
        Browser browser = browse(watch.page().group(1))) {
      watch.awaitOpen(Path.of(pair.port()));
      QuickPump.speak(pair, Double.POSITIVE_INFINITY);
      browser.awaitText("word", "PASS");
      pair.unplug();
      browser.awaitText("hint", "This result stands.");
      assertThat(browser.text("sentence")).isEqualTo("Switch the pump off");
      look("12-stands", browser);
    }
  }

  @Test
  void theCordStopsTheTest() throws Exception {
    try (PtyPair pair = PtyPair.in(folder);
        ProgramProcess watch = watch(pair);
        Browser browser = browse(watch.page().group(1))) {
      watch.awaitOpen(Path.of(pair.port()));
      QuickPump.speak(pair, 0.5);
      browser.awaitText("sentence", "Scan the pump’s number");
      browser.element("#open-checks").click();
      browser.element("input[name=cord][value=not-ok]").click();

      browser.awaitText("sentence", "Do not switch on");
      assertThat(browser.element("#start").isEnabled()).isFalse();
      look("8-cord", browser);
    }
  }

  @Test
  void aPulledSensorAndAKilledDaemonAreSaidAndGotOver() throws Exception {
    try (PtyPair pair = PtyPair.in(folder)) {
      String port;
      try (ProgramProcess watch = watch(pair);
          Browser browser = browse(watch.page().group(1))) {
        port = watch.page().group(2);
        browser.script("window.notReloaded = true");
        watch.awaitOpen(Path.of(pair.port()));
        QuickPump.speak(pair, QuickPump.BLOCKED + 0.8);
        browser.awaitText("sentence", "Hold");
        pair.unplug();
        browser.awaitText("sentence", "The sensor has gone: plug it in");
        look("9-unplugged", browser);
        pair.plugIn();
        watch.awaitOpen(Path.of(pair.port()));
        QuickPump.speak(pair, 1);
        browser.awaitText("sentence", "Repeat the test");
        browser.awaitText("reasons", "Readings are missing.");
        assertThat(browser.text("visit")).isEqualTo("Pump and checks stay for the repeat.");
        browser.picture("10-repeat");

        QuickPump.speak(pair, QuickPump.BLOCKED + 0.8);
        browser.awaitText("sentence", "Hold");
        watch.signal("KILL");
        browser.awaitText("sentence", "Thumbseal is not answering");
        look("11-stopped", browser);
        try (ProgramProcess again = watch(pair, "--page", port)) {
          again.awaitOpen(Path.of(pair.port()));
          CompletableFuture<Void> quiet = speaking(pair, UNHURRIED.quiet());
          browser.awaitText("sentence", "Scan the pump’s number");
          assertThat(browser.script("return window.notReloaded")).isEqualTo(true);
          quiet.get();
        }
      }
    }
  }
}
