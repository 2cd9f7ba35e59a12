package org.thumbseal.daemon;

import static org.assertj.core.api.Assertions.assertThat;
import static org.awaitility.Awaitility.await;
import static org.thumbseal.daemon.ScriptedLink.good;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.time.Duration;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.concurrent.CopyOnWriteArrayList;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.condition.EnabledOnOs;
import org.junit.jupiter.api.condition.OS;
import org.junit.jupiter.api.io.TempDir;
import org.thumbseal.link.HostClock;
import org.thumbseal.link.LinkAddress;
import org.thumbseal.link.Links;
import org.thumbseal.link.PtyPair;

/**
 * Two real programs at one real port. Who gets which byte is the system's choice: some, every other
 * line, or all go to the other. So the test asks for what must come of each of these: before long
 * it is said who has the port open too.
 */
@Timeout(180)
@EnabledOnOs(value = OS.LINUX, disabledReason = "skipped: pseudo-terminals of socat are for Linux")
class SharedReaderTest {
  private static final String IDENTITY = good("I,1,S1,1.0,G,-100000,0,100") + "\n";
  private static final Duration LINE = Duration.ofMillis(10);

  @TempDir Path folder;
  private final List<String> changes = new CopyOnWriteArrayList<>();
  private final List<Process> others = new ArrayList<>();
  private PtyPair pair;
  private PortSupervisor supervisor;
  private int sent;

  @BeforeEach
  void plugIn() throws Exception {
    pair = PtyPair.in(folder);
    Links links =
        new Links((kind, seed) -> Collections.emptyIterator(), System.in, HostClock.system());
    supervisor =
        new PortSupervisor(
            links.to(LinkAddress.parse(pair.port())),
            new Recorder(),
            new Surroundings(HostClock.system(), changes::add, Limits.STANDARD));
  }

  @AfterEach
  void end() throws Exception {
    others.forEach(Process::destroy);
    if (pair != null) {
      supervisor.stop();
      pair.close();
    }
  }

  private Process cat() throws IOException {
    Process cat =
        new ProcessBuilder("cat", pair.port())
            .redirectOutput(ProcessBuilder.Redirect.DISCARD)
            .start();
    others.add(cat);
    return cat;
  }

  /** A hundred readings a second, an identity every two seconds. */
  private void speakUntil(String what) {
    await()
        .atMost(Duration.ofMinutes(2))
        .pollInterval(LINE)
        .until(
            () -> {
              speak();
              return changes.stream().anyMatch(text -> text.contains(what));
            });
  }

  private void speak() throws IOException {
    String reading = good("S," + sent + "," + sent * 10_000L + ",-35") + "\n";
    pair.send((sent % 200 == 0 ? IDENTITY + reading : reading).getBytes(StandardCharsets.US_ASCII));
    sent++;
  }

  private static String said(Process other) {
    return "pid " + other.pid() + " (cat)";
  }

  @Test
  void oneThatComesLaterIsNamed() throws Exception {
    supervisor.start();
    speakUntil(Impression.SPEAKING.text());
    speakUntil(said(cat()));
  }

  @Test
  void oneThatWasThereBeforeIsNamed() throws Exception {
    Process cat = cat();
    supervisor.start();
    speakUntil(said(cat));
  }

  /** Nothing is wrong with a port that we have to ourselves. */
  @Test
  void whereThereIsNoneNoneIsNamed() throws Exception {
    supervisor.start();
    speakUntil(Impression.SPEAKING.text());
    int enough = sent + 1_000;
    await()
        .atMost(Duration.ofMinutes(2))
        .pollInterval(LINE)
        .until(
            () -> {
              speak();
              return sent > enough;
            });
    assertThat(changes).containsExactly(pair.port() + ": " + Impression.SPEAKING.text());
  }
}
