package org.thumbseal.daemon;

import static org.assertj.core.api.Assertions.assertThat;
import static org.awaitility.Awaitility.await;
import static org.thumbseal.daemon.ScriptedLink.good;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.time.Duration;
import java.util.Collections;
import java.util.List;
import java.util.concurrent.CopyOnWriteArrayList;
import org.awaitility.core.ConditionFactory;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.condition.EnabledOnOs;
import org.junit.jupiter.api.condition.OS;
import org.junit.jupiter.api.io.TempDir;
import org.thumbseal.link.HostClock;
import org.thumbseal.link.Link;
import org.thumbseal.link.LinkAddress;
import org.thumbseal.link.Links;
import org.thumbseal.link.PtyPair;

/** A supervisor with the waits of every day on a pseudo-terminal that is pulled out and put in. */
@Timeout(120)
@EnabledOnOs(value = OS.LINUX, disabledReason = "skipped: pseudo-terminals of socat are for Linux")
class PtySupervisorTest {
  @TempDir Path folder;

  private final Recorder recorder = new Recorder();
  private final List<String> changes = new CopyOnWriteArrayList<>();
  private PtyPair pair;
  private PortSupervisor supervisor;

  @BeforeEach
  void start() throws Exception {
    pair = PtyPair.in(folder);
    supervisor =
        new PortSupervisor(
            serial(pair.port()),
            recorder,
            new Surroundings(HostClock.system(), changes::add, Limits.STANDARD));
    supervisor.start();
    soon().until(() -> supervisor.state() == PortState.SETTLING);
  }

  @AfterEach
  void stop() throws Exception {
    if (pair != null) {
      supervisor.stop();
      pair.close();
    }
  }

  private static Link serial(String port) throws Exception {
    Links links =
        new Links((kind, seed) -> Collections.emptyIterator(), System.in, HostClock.system());
    return links.to(LinkAddress.parse(port));
  }

  private static ConditionFactory soon() {
    return await().atMost(Duration.ofSeconds(20));
  }

  private void send(String text) throws IOException {
    pair.send(text.getBytes(StandardCharsets.ISO_8859_1));
  }

  private List<String> lines() {
    return recorder.told.stream()
        .filter(text -> !text.startsWith("opened") && !text.startsWith("closed"))
        .map(text -> text.substring(text.indexOf(' ') + 1))
        .toList();
  }

  @Test
  void aHalfLineAtOpeningIsNoLine() throws Exception {
    send("00,-35*57AD\n" + good("S,1,2,3") + "\nbroken\n");
    soon().until(() -> lines().size() == 2);
    assertThat(lines()).containsExactly(good("S,1,2,3"), "broken");
  }

  @Test
  void aPortPulledOutAndPutInAgainIsReadWithinFiveSeconds() throws Exception {
    send(good("S,1,2,3") + "\n");
    soon().until(() -> lines().size() == 1);
    pair.unplug();
    soon().until(() -> supervisor.state() == PortState.ABSENT);
    pair.plugIn();
    await().atMost(Duration.ofSeconds(5)).until(() -> recorder.told("opened").size() == 2);
    send(good("S,4,5,6") + "\n");
    soon().until(() -> lines().size() == 2);
    supervisor.stop();
    assertThat(recorder.told("closed")).hasSize(2);
    assertThat(recorder.told.get(2)).endsWith("lost (unplugged or switched off)");
    assertThat(recorder.told).last().asString().endsWith("stopped");
    assertThat(changes)
        .containsExactly(
            pair.port() + ": a sensor is speaking",
            pair.port() + ": lost (unplugged or switched off); waiting for it",
            pair.port() + ": a sensor is speaking");
  }

  @Test
  void stoppingFreesAReaderThatWaitsInThePort() throws Exception {
    soon().until(() -> !recorder.quiet.isEmpty());
    supervisor.requestStop();
    soon().until(() -> supervisor.state() == PortState.ENDED);
    assertThat(recorder.told).last().asString().endsWith("stopped");
  }
}
