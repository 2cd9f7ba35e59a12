package org.thumbseal.daemon;

import static org.assertj.core.api.Assertions.assertThat;
import static org.awaitility.Awaitility.await;
import static org.thumbseal.daemon.ScriptedLink.good;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.time.Duration;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collections;
import java.util.List;
import java.util.Random;
import java.util.concurrent.CopyOnWriteArrayList;
import org.awaitility.core.ConditionFactory;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.condition.EnabledOnOs;
import org.junit.jupiter.api.condition.OS;
import org.junit.jupiter.api.io.TempDir;
import org.thumbseal.link.HostClock;
import org.thumbseal.link.LinkAddress;
import org.thumbseal.link.Links;
import org.thumbseal.link.PtyPair;

/** What goes wrong with sensors on real ports, played on pseudo-terminals. */
@Timeout(120)
@EnabledOnOs(value = OS.LINUX, disabledReason = "skipped: pseudo-terminals of socat are for Linux")
class SerialTroubleTest {
  private static final String IDENTITY = good("I,1,S1,1.0,G,-100000,0,100") + "\n";
  private static final String SAMPLE = good("S,0,1000,-35");

  @TempDir Path folder;
  private final Recorder recorder = new Recorder();
  private final List<String> changes = new CopyOnWriteArrayList<>();
  private final List<PtyPair> pairs = new ArrayList<>();
  private final List<PortSupervisor> supervisors = new ArrayList<>();

  @AfterEach
  void stop() throws Exception {
    for (PortSupervisor supervisor : supervisors) {
      supervisor.stop();
    }
    for (PtyPair pair : pairs) {
      pair.close();
    }
  }

  private PtyPair pair(String name) throws IOException {
    PtyPair pair = PtyPair.named(folder, name);
    pairs.add(pair);
    return pair;
  }

  private PortSupervisor watch(String address, SessionHandler handler) throws Exception {
    Links links =
        new Links((kind, seed) -> Collections.emptyIterator(), System.in, HostClock.system());
    PortSupervisor supervisor =
        new PortSupervisor(
            links.to(LinkAddress.parse(address)),
            handler,
            new Surroundings(HostClock.system(), changes::add, Limits.STANDARD));
    supervisors.add(supervisor);
    supervisor.start();
    soon().until(() -> supervisor.state() == PortState.SETTLING);
    return supervisor;
  }

  private static ConditionFactory soon() {
    return await().atMost(Duration.ofSeconds(30));
  }

  private static void send(PtyPair pair, String text) throws IOException {
    pair.send(text.getBytes(StandardCharsets.ISO_8859_1));
  }

  private List<String> lines() {
    return recorder.told.stream()
        .filter(text -> !text.startsWith("opened") && !text.startsWith("closed"))
        .map(text -> text.substring(text.indexOf(' ') + 1))
        .toList();
  }

  /** The link by id is made anew by the device manager, in one step. */
  private void linkTo(Path byId, PtyPair pair) throws IOException {
    Path fresh = folder.resolve("fresh");
    Files.createSymbolicLink(fresh, Path.of(pair.port()).toRealPath());
    Files.move(fresh, byId, StandardCopyOption.REPLACE_EXISTING, StandardCopyOption.ATOMIC_MOVE);
  }

  @Test
  void aBoardThatComesBackUnderAnotherNumberIsFoundByItsId() throws Exception {
    PtyPair before = pair("ttyUSB0");
    PtyPair after = pair("ttyUSB1");
    Path byId = folder.resolve("usb-sensor_17-if00");
    linkTo(byId, before);
    PortSupervisor supervisor = watch(byId.toString(), recorder);
    send(before, IDENTITY);
    soon().until(() -> lines().size() == 1);
    before.unplug();
    soon().until(() -> supervisor.state() == PortState.ABSENT);
    linkTo(byId, after);
    soon().until(() -> recorder.told("opened").size() == 2);
    send(after, SAMPLE + "\n");
    soon().until(() -> lines().size() == 2);
    assertThat(changes)
        .containsExactly(
            byId + ": a sensor is speaking",
            byId + ": lost (unplugged or switched off); waiting for it",
            byId + ": a sensor is speaking");
  }

  @Test
  void halfALineAtOpeningAndABannerAreNoLines() throws Exception {
    PtyPair pair = pair("near");
    watch(pair.port(), recorder);
    send(pair, SAMPLE.substring(5) + "\r\nready.\r\n" + SAMPLE + "\n");
    soon().until(() -> lines().size() == 1);
    assertThat(lines()).containsExactly(SAMPLE);
  }

  /**
   * A pseudo-terminal has no speed, so these are the bytes that a receiver of 9600 baud would make
   * of a sender of 115200: each of its bits covers twelve of the sender's, so what it samples is
   * nearly at random. Real lines differ in which bytes they give; that none fits a checksum is the
   * same.
   */
  @Test
  void aWrongLineSpeedIsSaidToBeOneAndNothingIsTaken() throws Exception {
    PtyPair pair = pair("near");
    watch(pair.port() + "?baud=9600", recorder);
    Random bits = new Random(9_600);
    byte[] garbage = new byte[2_000];
    bits.nextBytes(garbage);
    pair.send(garbage);
    soon().until(() -> !changes.isEmpty());
    String said = pair.port() + "?baud=9600: " + Impression.NO_SENSOR.text();
    assertThat(changes).singleElement().asString().startsWith(said);
    assertThat(lines()).isEmpty();
    send(pair, "\n" + SAMPLE + "\n");
    soon().until(() -> !lines().isEmpty());
    assertThat(lines()).containsExactly(SAMPLE);
  }

  @Test
  void aBoardThatStartsAnewAtTheOpeningSpeaksAfterItsBanner() throws Exception {
    PtyPair pair = pair("near");
    PortSupervisor supervisor = watch(pair.port() + "?board=reset-on-open", recorder);
    send(pair, "\u0000\u00f0boot loader 4.4, 2 s\r\n" + good("S,9,9,9") + "\n");
    soon().until(() -> quietMicros() > 2_500_000);
    assertThat(lines()).isEmpty();
    assertThat(supervisor.state()).isEqualTo(PortState.SETTLING);
    send(pair, IDENTITY + SAMPLE + "\n");
    soon().until(() -> lines().size() == 2);
    assertThat(lines()).containsExactly(IDENTITY.strip(), SAMPLE);
    assertThat(changes).containsExactly(pair.port() + "?board=reset-on-open: a sensor is speaking");
  }

  private long quietMicros() {
    return recorder.quiet.stream().mapToLong(t -> Long.parseLong(t.substring(6))).max().orElse(0);
  }

  /** Eight megabytes without a line end, as fast as the terminal takes them. */
  @Test
  void aFloodOfGarbageTakesNoMemoryAndAfterItGoodLinesAreTaken() throws Exception {
    PtyPair pair = pair("near");
    watch(pair.port(), recorder);
    send(pair, IDENTITY);
    soon().until(() -> lines().size() == 1);
    byte[] block = new byte[1 << 16];
    Arrays.fill(block, (byte) 'U');
    for (int i = 0; i < 128; i++) {
      pair.send(block);
    }
    send(pair, "\n" + SAMPLE + "\n");
    soon().until(() -> lines().contains(SAMPLE));
    List<String> all = lines();
    assertThat(all).hasSizeLessThanOrEqualTo(3).allMatch(text -> text.length() <= 256);
  }

  @Test
  void sixteenPortsAtOnceAreEachReadToTheLastLineAndStopTogether() throws Exception {
    int each = 500;
    List<Recorder> recorders = new ArrayList<>();
    for (int i = 0; i < 16; i++) {
      PtyPair pair = pair("port" + i);
      recorders.add(new Recorder());
      watch(pair.port(), recorders.get(i));
    }
    for (int n = 0; n < each; n++) {
      for (int i = 0; i < 16; i++) {
        send(pairs.get(i), good("S," + n + "," + n * 5_000L + ",-" + i) + "\n");
      }
    }
    for (int i = 0; i < 16; i++) {
      Recorder one = recorders.get(i);
      soon().until(() -> one.told.size() == 1 + each);
      assertThat(one.told.get(each)).contains(good("S,499,2495000,-" + i));
    }
    new Daemon(supervisors).stop();
    recorders.forEach(one -> assertThat(one.told).last().asString().endsWith("stopped"));
  }
}
