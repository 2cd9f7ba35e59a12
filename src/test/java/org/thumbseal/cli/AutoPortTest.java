package org.thumbseal.cli;

import static java.nio.charset.StandardCharsets.US_ASCII;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.awaitility.Awaitility.await;

import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.CopyOnWriteArrayList;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.condition.EnabledOnOs;
import org.junit.jupiter.api.condition.OS;
import org.junit.jupiter.api.io.TempDir;
import org.thumbseal.daemon.OpenedLink;
import org.thumbseal.link.HostClock;
import org.thumbseal.link.Link;
import org.thumbseal.link.LinkAddress;
import org.thumbseal.link.LinkConnection;
import org.thumbseal.link.OtherProgram;
import org.thumbseal.link.PortProbe;
import org.thumbseal.link.PtyPair;
import org.thumbseal.link.SensorSearch;
import org.thumbseal.link.SerialSettings;
import org.thumbseal.wire.Crc16;

/**
 * Sensors among pseudo-terminals. The system does not list those, so they get names by id in a
 * folder that takes the place of {@code /dev/serial/by-id}.
 */
@Timeout(120)
@EnabledOnOs(value = OS.LINUX, disabledReason = "skipped: pseudo-terminals of socat are for Linux")
class AutoPortTest {
  private static final String BY_ID = "thumbseal.serial.by-id";
  private static final byte[] IDENTITY =
      (Crc16.seal("I,1,tp-01,1.0,G,-115000,15000,100") + "\n").getBytes(US_ASCII);
  private static final Duration LONG = Duration.ofSeconds(30);

  @TempDir Path folder;
  private Path byId;
  private final List<String> said = new CopyOnWriteArrayList<>();
  private final List<PtyPair> pairs = new ArrayList<>();

  @BeforeEach
  void namesById() throws Exception {
    byId = Files.createDirectory(folder.resolve("by-id"));
    System.setProperty(BY_ID, byId.toString());
  }

  @AfterEach
  void close() throws Exception {
    System.clearProperty(BY_ID);
    for (PtyPair pair : pairs) {
      pair.close();
    }
  }

  private PtyPair plugIn(String name) throws Exception {
    PtyPair pair = PtyPair.named(folder, name);
    pairs.add(pair);
    Files.createSymbolicLink(byId.resolve("usb-" + name), Path.of(pair.port()).toRealPath());
    return pair;
  }

  private AutoPort auto(Duration patience) {
    PortProbe probe = new PortProbe(HostClock.system(), patience);
    SensorSearch search = new SensorSearch(List::of, probe, SerialSettings.STANDARD);
    var any = new LinkAddress.Serial("auto", "auto", SerialSettings.STANDARD);
    return new AutoPort(any, search, said::add);
  }

  private String line(String name, String text) {
    return "auto: " + byId.resolve("usb-" + name) + ": " + text;
  }

  @Test
  void allSensorsAreFoundUnderTheirLastingNamesAndOpenAlready() throws Exception {
    plugIn("a").send(IDENTITY);
    plugIn("b").send(IDENTITY);
    plugIn("c").send("hello\n".getBytes(US_ASCII));
    plugIn("d");
    List<Link> found = auto(Duration.ofSeconds(3)).find(false);
    assertThat(found.stream().map(Link::name))
        .containsExactlyInAnyOrder(byId.resolve("usb-a") + "", byId.resolve("usb-b") + "");
    String sensor = "sensor tp-01, firmware 1.0, gauge, -115 to 15 kPa, 100 Hz";
    assertThat(said)
        .containsExactlyInAnyOrder(
            line("a", sensor),
            line("b", sensor),
            line(
                "c",
                "something comes, but it is no sensor at this line speed (PORT?baud=N); if a board"
                    + " prints plain numbers here: watch --port PORT --format lines:..."),
            line("d", "nothing comes"));
    for (Link link : found) {
      assertThat(link).isInstanceOf(OpenedLink.class);
      ((OpenedLink) link).close();
    }
  }

  @Test
  void aPortThatAnotherProgramHoldsIsLeftAloneAndWithoutAnyOtherThereIsNone() throws Exception {
    PtyPair pair = plugIn("held");
    pair.send(IDENTITY);
    Process other = OtherProgram.holding(pair.port());
    assertThatThrownBy(() -> auto(Duration.ofSeconds(3)).find(false))
        .hasMessage(
            "no sensor found; plug one in, name its port (--port), or wait for it (--wait)");
    assertThat(said).containsExactly(line("held", "in use by another program; close that program"));
    other.destroy();
    await().atMost(LONG).until(() -> !other.isAlive());
  }

  @Test
  void aSensorThatComesLaterIsWaitedForAndFoundAgainOnAnotherPort() throws Exception {
    Link sensor = auto(Duration.ofSeconds(5)).find(true).get(0);
    assertThat(said).containsExactly("auto: no serial port on USB");
    assertThat(sensor.name()).isEqualTo("auto");
    assertThatThrownBy(sensor::open).hasMessage("no sensor found (no serial port on USB)");
    PtyPair first = plugIn("first");
    first.send(IDENTITY);
    sensor.open().close();
    Files.delete(byId.resolve("usb-first"));
    PtyPair second = plugIn("second");
    second.send(IDENTITY);
    try (LinkConnection open = sensor.open()) {
      second.send(IDENTITY);
      assertThat(open.read(new byte[64])).isPositive();
    }
  }

  @Test
  void noOtherPortIsNamedBesideAuto() {
    CommandRun run = CommandRun.of("watch", "--port", "auto", "--port", "/dev/ttyUSB0");
    assertThat(run.code()).isEqualTo(2);
    assertThat(run.err())
        .contains("--port auto finds all ports on USB; name no other port beside it");
  }
}
