package org.thumbseal.daemon;

import static org.assertj.core.api.Assertions.assertThat;
import static org.awaitility.Awaitility.await;
import static org.thumbseal.daemon.ScriptedLink.good;

import java.net.InetAddress;
import java.net.ServerSocket;
import java.net.Socket;
import java.nio.charset.StandardCharsets;
import java.time.Duration;
import java.util.Collections;
import java.util.List;
import java.util.concurrent.CopyOnWriteArrayList;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.thumbseal.link.HostClock;
import org.thumbseal.link.LinkAddress;
import org.thumbseal.link.Links;

/** A network sensor that goes and comes back. */
@Timeout(60)
class TcpSupervisorTest {
  private static final Duration LONG = Duration.ofSeconds(20);
  private static final Duration SHORT = Duration.ofMillis(10);

  private final Recorder recorder = new Recorder();
  private final List<String> changes = new CopyOnWriteArrayList<>();

  private PortSupervisor start(int port, Duration silence) throws Exception {
    Links links =
        new Links((kind, seed) -> Collections.emptyIterator(), System.in, HostClock.system());
    String host = InetAddress.getLoopbackAddress().getHostAddress();
    Limits limits = new Limits(new BackOff(SHORT, SHORT), silence, 64, true);
    PortSupervisor supervisor =
        new PortSupervisor(
            links.to(LinkAddress.parse("tcp:" + host + ":" + port)),
            recorder,
            new Surroundings(HostClock.system(), changes::add, limits));
    supervisor.start();
    return supervisor;
  }

  private static void speak(Socket sensor) throws Exception {
    String line = good("S,1,2,3") + "\n";
    sensor.getOutputStream().write(line.getBytes(StandardCharsets.US_ASCII));
  }

  @Test
  void aConnectionThatIsClosedIsMadeAgain() throws Exception {
    try (ServerSocket server = new ServerSocket(0, 5, InetAddress.getLoopbackAddress())) {
      PortSupervisor supervisor = start(server.getLocalPort(), Duration.ofMinutes(1));
      try (Socket first = server.accept()) {
        speak(first);
        await().atMost(LONG).until(() -> recorder.told.size() == 2);
      }
      try (Socket second = server.accept()) {
        speak(second);
        await().atMost(LONG).until(() -> recorder.told.size() == 5);
        supervisor.stop();
      }
    }
    assertThat(recorder.told("opened")).hasSize(2);
    assertThat(recorder.told("closed")).hasSize(2);
    assertThat(changes).anyMatch(text -> text.contains("lost (unplugged or switched off)"));
  }

  @Test
  void aSensorThatLostItsPowerAndNeverSaidGoodByeIsMissed() throws Exception {
    try (ServerSocket server = new ServerSocket(0, 5, InetAddress.getLoopbackAddress())) {
      PortSupervisor supervisor = start(server.getLocalPort(), Duration.ofMillis(300));
      try (Socket first = server.accept()) {
        speak(first);
        try (Socket second = server.accept()) {
          assertThat(second.isConnected()).isTrue();
        }
      }
      supervisor.stop();
    }
    assertThat(recorder.told.get(2)).startsWith("closed").contains("no good line for 0.3 s");
  }
}
