package org.thumbseal.cli;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

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

/** The search for a leak on the page: a real browser, a real daemon, a jar that leaks. */
@Timeout(300)
@EnabledOnOs(value = OS.LINUX, disabledReason = "skipped: pseudo-terminals of socat are for Linux")
class SeekPageTest {
  private static final double TO_THE_END = Double.POSITIVE_INFINITY;

  /** Into the blocking, s of the scenario. */
  private static final double HELD = 15;

  @TempDir private Path folder;

  private ProgramProcess watch(PtyPair pair, String... page) throws IOException {
    List<Object> args =
        new ArrayList<>(List.of("watch", "--port", pair.port(), "--jar-l", QuickPump.LITRES));
    args.addAll(List.of("--results", folder.resolve("results")));
    args.addAll(List.of("--key", folder.resolve("keys/k.pem")));
    args.addAll(List.of(page));
    return ProgramProcess.start(folder, args.toArray());
  }

  private Browser browse(ProgramProcess watch, String profile) {
    return Browser.at(watch.page().group(1), folder.resolve(profile));
  }

  private static CompletableFuture<Void> speaking(PtyPair pair, int station, double until) {
    return CompletableFuture.runAsync(
        () -> {
          try {
            QuickPump.speak(pair, QuickPump.at(station), until);
          } catch (IOException e) {
            throw new UncheckedIOException(e);
          }
        });
  }

  /** Something that is done at the bench. */
  private interface Stage {
    void run() throws Exception;
  }

  private static void whileIdle(PtyPair pair, Stage stage) throws Exception {
    Idle idle = new Idle(pair);
    try {
      stage.run();
    } finally {
      idle.stop();
    }
  }

  /** A sensor that goes on speaking while the pump is off and somebody reads the page. */
  private static final class Idle {
    private final CompletableFuture<Void> speaking;
    private volatile boolean listened = true;

    Idle(PtyPair pair) {
      speaking =
          CompletableFuture.runAsync(
              () -> {
                try {
                  QuickPump.idle(pair, () -> listened);
                } catch (IOException e) {
                  throw new UncheckedIOException(e);
                }
              });
    }

    void stop() {
      listened = false;
      speaking.join();
    }
  }

  private static void look(String name, Browser browser) throws IOException {
    browser.picture(name);
    assertThat(browser.barriers()).as(name).isEmpty();
  }

  private static void press(Browser browser, String deed) {
    browser.element("#seek-buttons [data-deed=" + deed + "]").click();
  }

  /** Names the pump, heeds the cautions, and begins. */
  private static void begin(PtyPair pair, Browser browser) throws Exception {
    whileIdle(
        pair,
        () -> {
          named(browser, "jar inlet");
        });
  }

  private static void named(Browser browser, String place) throws IOException {
    browser.awaitText("sentence", "Scan the pump’s number");
    assertThat(browser.element("#find").isDisplayed()).isFalse();
    browser.type("SP-014" + Keys.ENTER);
    browser.awaitText("pump", "SP-014");
    browser.element("#find").click();
    browser.awaitText("sentence", "Read this first");
    browser.awaitText("seek-cautions", "the patient goes first");
    assertThat(browser.text("seek-cautions"))
        .contains("Gloves.", "unplugged", "Never open the pump");
    look("21-seek-first", browser);
    press(browser, "begin");
    browser.awaitText("sentence", "Set up at: " + place);
    assertThat(browser.text("hint")).contains("The jar in its place, lid shut.");
    look("22-seek-" + place.replace(' ', '-'), browser);
    browser.element("#start").click();
    browser.awaitText("sentence", "Switch the pump on");
  }

  private static void firstTest(PtyPair pair, Browser browser) throws Exception {
    CompletableFuture<Void> pump = speaking(pair, 1, TO_THE_END);
    browser.awaitText("sentence", "Block and hold: jar inlet");
    browser.picture("23-seek-block");
    browser.awaitText("sentence", "Let go");
    browser.awaitText("sentence", "Switch the pump off and unplug it");
    browser.awaitText("seek-told", "jar inlet: ");
    // A station's verdict says nothing about the pump.
    assertThat(browser.element("#verdict").isDisplayed()).isFalse();
    browser.awaitText("sentence", "Set up at: jar outlet");
    assertThat(browser.text("hint")).contains("the jar too");
    pump.get();
    whileIdle(
        pair,
        () -> {
          look("24-seek-jar-outlet", browser);
        });
  }

  @Test
  void theLeakingJarIsFoundThroughAReloadTwoWindowsAnotherPumpAndAPulledSensor() throws Exception {
    try (PtyPair pair = PtyPair.in(folder);
        ProgramProcess watch = watch(pair);
        Browser browser = browse(watch, "profile");
        Browser other = browse(watch, "other")) {
      watch.awaitOpen(Path.of(pair.port()));
      begin(pair, browser);
      firstTest(pair, browser);

      whileIdle(
          pair,
          () -> {
            reloadedAndSeenTwice(browser, other);
          });
      anotherPump(pair, browser);
      pulled(pair, browser);
      CompletableFuture<Void> pump = speaking(pair, 2, TO_THE_END);
      browser.awaitText("sentence", "Let go");
      browser.awaitText("sentence", "Leak: the jar with its lid gasket");
      browser.awaitText("seek-file", "Sealed: ");
      browser.awaitText("seek-told", "The jar with its lid gasket takes");
      browser.awaitText("seek-advice", "lid gasket, renew it");
      other.awaitText("sentence", "Leak: the jar with its lid gasket");
      pump.get();
      look("28-seek-found", browser);
      sealed();

      press(browser, "close");
      browser.awaitText("pump", "SP-014");
      whileIdle(
          pair,
          () -> {
            browser.awaitText("sentence", "Press Start");
          });
      assertThat(other.element("#seek").isDisplayed()).isFalse();
    }
  }

  private static void reloadedAndSeenTwice(Browser browser, Browser other) throws IOException {
    browser.script("location.reload()");
    browser.awaitText("sentence", "Set up at: jar outlet");
    browser.awaitText("seek-told", "jar inlet: ");

    other.awaitText("sentence", "Set up at: jar outlet");
    press(other, "back");
    browser.awaitText("sentence", "Set up at: jar inlet");
    browser.awaitText("seek-state", "Of two tests there the later counts.");
    look("25-seek-again", browser);
    press(browser, "forward");
    other.awaitText("sentence", "Set up at: jar outlet");
  }

  /** The pump that is named has its own test, and the search loses nothing. */
  private static void anotherPump(PtyPair pair, Browser browser) throws Exception {
    browser.type("SP-099" + Keys.ENTER);
    browser.awaitText("seek-state", "The search rests. Nothing is lost");
    browser.awaitText("pump", "SP-099");
    QuickPump.speak(pair, QuickPump.switchedOff(), TO_THE_END);
    browser.awaitText("word", "PASS");
    browser.awaitText("of", "SP-099");
    look("26-seek-rests", browser);
    press(browser, "go-on");
    browser.awaitText("seek-state", "Tests that count: 1.");
    whileIdle(
        pair,
        () -> {
          browser.awaitText("sentence", "Set up at: jar outlet");
        });
  }

  private static void pulled(PtyPair pair, Browser browser) throws Exception {
    speaking(pair, 2, HELD).get();
    browser.awaitText("sentence", "Hold");
    pair.unplug();
    browser.awaitText("sentence", "The sensor has gone: plug it in");
    look("27-seek-unplugged", browser);
    pair.plugIn();
    whileIdle(
        pair,
        () -> {
          browser.awaitText("seek-told", "this test does not count");
          browser.awaitText("sentence", "Set up at: jar outlet");
          browser.awaitText("seek-state", "Tests that count: 1.");
        });
  }

  private void sealed() throws Exception {
    List<JsonNode> documents = new ArrayList<>();
    for (Path file : new ResultFiles(folder.resolve("results")).documents()) {
      documents.add(ResultFiles.read(file));
    }
    List<JsonNode> searches =
        documents.stream().filter(d -> d.path("kind").asString("").equals("leak-search")).toList();
    assertThat(searches).hasSize(1);
    assertThat(searches.get(0).at("/asset/id").asString()).isEqualTo("SP-014");
    assertThat(searches.get(0).at("/conclusion/code").asString()).isEqualTo("section-leaks");
    assertThat(searches.get(0).at("/tests")).hasSize(2);
    JsonNode leak = searches.get(0).at("/sections/0/leak");
    assertThat(leak.at("/value").doubleValue())
        .as("4 L/min leak in")
        .isCloseTo(4_000, within(leak.at("/expandedUncertainty").doubleValue()));
    // Neither pump nor jar in its tests, though the program was told of a jar; the other's has
    // both.
    for (JsonNode test : documents) {
      boolean own = test.at("/asset/id").asString("").equals("SP-099");
      if (test.has("verdict")) {
        assertThat(test.has("asset")).isEqualTo(own);
        assertThat(test.at("/test").has("jar")).isEqualTo(own);
        assertThat(test.at("/test/leakSearch").asString("")).isEqualTo(own ? "" : "SP-014");
      }
    }
    CommandRun verify =
        CommandRun.of("verify", folder.resolve("results"), "--key", folder.resolve("keys/k.pem"));
    assertThat(verify.code()).as(verify.out()).isZero();
  }

  @Test
  void placesThatHaveNamesHereAreAskedForByThem() throws Exception {
    Path file =
        Files.writeString(
            folder.resolve("our.txt"), "* bedside nipple; the tall glass\nwall plate; the pump\n");
    try (PtyPair pair = PtyPair.in(folder);
        ProgramProcess watch = watch(pair, "--stations", file.toString());
        Browser browser = browse(watch, "profile")) {
      watch.awaitOpen(Path.of(pair.port()));
      whileIdle(
          pair,
          () -> {
            named(browser, "bedside nipple");
          });
    }
  }

  @Test
  void aKilledDaemonSaysWhatIsLostAndHowToGoOn() throws Exception {
    try (PtyPair pair = PtyPair.in(folder)) {
      String port;
      try (ProgramProcess watch = watch(pair);
          Browser browser = browse(watch, "profile")) {
        port = watch.page().group(2);
        watch.awaitOpen(Path.of(pair.port()));
        begin(pair, browser);
        firstTest(pair, browser);
        watch.signal("KILL");
        browser.awaitText("sentence", "Thumbseal is not answering");
        try (ProgramProcess again = watch(pair, "--page", port)) {
          again.awaitOpen(Path.of(pair.port()));
          whileIdle(
              pair,
              () -> {
                lost(browser);
              });
        }
      }
    }
  }

  private static void lost(Browser browser) throws IOException {
    browser.awaitText("seek-state", "Its tests are sealed");
    assertThat(browser.text("seek-state"))
        .containsPattern("thumbseal seek-leak SP-014 --from 2=\\S+\\.json --port P");
    look("29-seek-lost", browser);
    press(browser, "close");
    browser.awaitText("sentence", "Scan the pump’s number");
    assertThat(browser.element("#seek").isDisplayed()).isFalse();
  }
}
