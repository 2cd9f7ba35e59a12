package org.thumbseal.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.condition.EnabledOnOs;
import org.junit.jupiter.api.condition.OS;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import org.thumbseal.feed.TestBroker;

/** The command {@code feed} as it is typed, and {@code watch --feed}. */
@Timeout(180)
class FeedCommandTest {
  @TempDir private Path folder;
  private Path results;
  private Path key;

  @BeforeEach
  void aResult() {
    results = folder.resolve("results");
    key = folder.resolve("keys/k.pem");
    done("SP-014");
  }

  private void done(String asset) {
    CommandRun run =
        CommandRun.of(
            "done", asset, "repair", "--by", "Workshop", "--results", results, "--key", key);
    assertThat(run.code()).as(run.err()).isZero();
  }

  private CommandRun feed(String... args) {
    List<Object> all = new ArrayList<>(List.of("feed"));
    all.addAll(List.of(args));
    all.addAll(List.of("--results", results));
    return CommandRun.of(all.toArray());
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "http://h|'http://h': write mqtts://HOST, mqtt://HOST or https://HOST/PATH",
        "mqtts://u:p@h|the address holds a name or a password; put them into a file",
        "mqtts://h --topic a/#|a topic begins with a name such as",
        "https://h/in --topic a|a topic is for a broker; an https address has none",
        "mqtts://h --credentials none|none: no such file; it is to hold user= and password=",
        "mqtts://h --ca none|none: no such file; name the certificate of the authority",
        "mqtts://h --again --all|--all sends what was refused too; leave --again out",
      })
  void aMistakeIsOneLine(String line, String message) {
    CommandRun run = feed(line.split(" ", -1));
    assertThat(run.err()).startsWith("thumbseal: " + message).hasLineCount(1);
    assertThat(run.out()).isEmpty();
    assertThat(run.code()).isEqualTo(2);
    assertThat(results.resolve(".feed")).doesNotExist();
  }

  @ParameterizedTest
  @ValueSource(strings = {"--feed-topic=a", "--feed-outbox=o", "--feed-without-subscriber"})
  void aWatchThatSaysHowToSendAndNotWhereTo(String option) {
    CommandRun run = CommandRun.of("watch", "--port", "sim:sound", option, "--key", key);
    assertThat(run.err()).startsWith("thumbseal: --feed-... says how to send; say where to");
    assertThat(run.code()).isEqualTo(2);
  }

  @Test
  void whereNobodyAnswersItWaitsAndSaysSo() throws Exception {
    String nobody = "mqtt://127.0.0.1:" + TestBroker.freePort();
    CommandRun once = feed(nobody, "--once");
    assertThat(once.code()).isEqualTo(3);
    assertThat(once.err()).startsWith("thumbseal: cannot be reached: ").hasLineCount(1);
    done("SP-015");
    CommandRun status = feed(nobody, "--status");
    assertThat(status.code()).isEqualTo(1);
    assertThat(status.out()).matches("feed: 2 waiting since \\S+Z: cannot be reached: .*\n");
    assertThat(feed("https://127.0.0.1/in", "--status").out()).isEqualTo("feed: 2 waiting\n");
  }

  @Test
  void onceAndAgain() throws Exception {
    try (TestBroker broker = TestBroker.in(folder.resolve("broker"))) {
      assertThat(feed(broker.address(), "--once").code()).isZero();
      CommandRun again = feed(broker.address(), "--once");
      assertThat(again.out()).isEqualTo("feed: all sent\n");
      assertThat(again.err()).isEmpty();
      assertThat(feed(broker.address(), "--status").code()).isZero();
      broker.await(1);
      assertThat(feed(broker.address(), "--once", "--all").code()).isZero();
      broker.await(1);
      assertThat(broker.arrivals()).isBetween(1, 2);
    }
  }

  @Test
  @EnabledOnOs(value = OS.LINUX, disabledReason = "skipped: signals are sent as on Linux")
  void itFollowsUntilItIsToldToStop() throws Exception {
    try (TestBroker broker = TestBroker.in(folder.resolve("broker"));
        ProgramProcess feed =
            ProgramProcess.start(folder, "feed", broker.address(), "--results", results)) {
      broker.await(1);
      done("SP-015");
      broker.await(2);
      CommandRun second = feed(broker.address(), "--once");
      assertThat(second.code()).isEqualTo(3);
      assertThat(second.err()).contains("another thumbseal (process ");
      feed.signal("TERM");
      assertThat(feed.awaitEnd()).as(feed.err()).isZero();
      assertThat(feed.err()).isEmpty();
    }
  }

  /** The broker is away: the test is graded and stored, and the line about health says so. */
  @Test
  @EnabledOnOs(value = OS.LINUX, disabledReason = "skipped: signals are sent as on Linux")
  void aWatchSendsWhatItStoresAndIsNotHeldUp() throws Exception {
    try (TestBroker broker = TestBroker.in(folder.resolve("broker"))) {
      broker.stop();
      try (ProgramProcess watch = watch(broker)) {
        watch.awaitErr("feed: cannot be reached: Connection refused; results are stored all the");
        watch.awaitOut(": PASS ");
        broker.start();
        broker.await(2);
        watch.awaitErr("feed: it goes again; ");
        watch.signal("TERM");
        assertThat(watch.awaitEnd()).as(watch.err()).isZero();
      }
      broker.stop();
      done("SP-016");
      try (ProgramProcess watch = watch(broker)) {
        watch.awaitErr("feed: cannot be reached");
        watch.awaitOut(": PASS ");
        watch.signal("TERM");
        assertThat(watch.awaitEnd()).as(watch.err()).isZero();
        assertThat(watch.err())
            .containsPattern("health: .*; feed: [12] waiting since \\S+Z: cannot be reached");
      }
    }
    assertThat(Files.readString(results.resolve("head.json"), StandardCharsets.UTF_8))
        .contains("\"sequence\":4");
  }

  private ProgramProcess watch(TestBroker broker) throws Exception {
    return ProgramProcess.start(
        folder,
        "watch",
        "--port",
        "sim:sound,speed=4",
        "--port",
        "sim:idle",
        "--results",
        results,
        "--key",
        key,
        "--page",
        "off",
        "--feed",
        broker.address(),
        "--feed-outbox",
        folder.resolve("outbox"));
  }
}
