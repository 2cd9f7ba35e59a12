package org.thumbseal.daemon;

import static org.assertj.core.api.Assertions.assertThat;
import static org.awaitility.Awaitility.await;
import static org.thumbseal.daemon.ScriptedLink.good;

import java.nio.file.Path;
import java.time.Duration;
import java.util.Collections;
import java.util.List;
import java.util.concurrent.CopyOnWriteArrayList;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;
import org.thumbseal.link.HostClock;
import org.thumbseal.link.Link;
import org.thumbseal.link.LinkAddress;
import org.thumbseal.link.LinkUnavailable.Reason;
import org.thumbseal.link.Links;

@Timeout(60)
class DaemonTest {
  private final List<String> changes = new CopyOnWriteArrayList<>();

  private PortSupervisor supervisor(Link link, SessionHandler handler, HostClock clock) {
    return new PortSupervisor(
        link, handler, new Surroundings(clock, changes::add, Limits.STANDARD));
  }

  @Test
  void itEndsWhenAllFiniteInputsHaveEnded() throws Exception {
    ScriptedLink one = new ScriptedLink().thatEnds();
    ScriptedLink two = new ScriptedLink().thatEnds();
    one.opening(one.lost());
    two.opening(two.bytes(good("S,1,0,0") + "\n"), two.lost());
    Daemon daemon =
        new Daemon(
            List.of(
                supervisor(one, new Recorder(), one.clock),
                supervisor(two, new Recorder(), two.clock)));
    daemon.start();
    daemon.awaitEnd();
    assertThat(daemon.ports())
        .extracting(PortSupervisor::outcome)
        .containsOnly(PortOutcome.INPUT_ENDED);
  }

  @Test
  void aBadPortDoesNotStopTheOthers() throws Exception {
    ScriptedLink bad = new ScriptedLink().thatEnds().refusing(Reason.FAILED, "broken");
    ScriptedLink fine = new ScriptedLink();
    Recorder recorder = new Recorder();
    ScriptedLink.Step[] steps = new ScriptedLink.Step[50];
    java.util.Arrays.fill(steps, fine.bytes(good("S,1,0,0") + "\n"));
    fine.opening(steps);
    Daemon daemon =
        new Daemon(
            List.of(
                supervisor(bad, new Recorder(), bad.clock),
                supervisor(fine, recorder, fine.clock)));
    PortSupervisor tried = daemon.ports().get(0);
    fine.whenDone(
        () -> {
          awaitEnd(tried);
          daemon.requestStop();
        });
    daemon.start();
    daemon.awaitEnd();
    assertThat(recorder.told).hasSize(52);
    assertThat(daemon.ports())
        .extracting(PortSupervisor::outcome)
        .containsExactly(PortOutcome.NOT_OPENED, PortOutcome.STOPPED);
  }

  /** Else the stop may come before the bad port was tried at all. */
  private static void awaitEnd(PortSupervisor port) {
    try {
      port.awaitEnd();
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
    }
  }

  @Test
  void stoppingDoesNotWaitForTheNextTry(@TempDir Path folder) throws Exception {
    Links links =
        new Links((kind, seed) -> Collections.emptyIterator(), System.in, HostClock.system());
    Link missing = links.to(LinkAddress.parse(folder + "/nowhere"));
    Limits patient =
        new Limits(
            new BackOff(Duration.ofHours(1), Duration.ofHours(1)), Duration.ofSeconds(5), 64, true);
    PortSupervisor waiting =
        new PortSupervisor(
            missing, new Recorder(), new Surroundings(HostClock.system(), changes::add, patient));
    Daemon daemon = new Daemon(List.of(waiting));
    daemon.start();
    await().atMost(Duration.ofSeconds(20)).until(() -> !changes.isEmpty());
    daemon.stop();
    assertThat(waiting.outcome()).isEqualTo(PortOutcome.STOPPED);
    assertThat(changes).hasSize(1);
    assertThat(changes.get(0)).contains("no such port").endsWith("; waiting for it");
  }
}
