package org.thumbseal.cli;

import static java.nio.file.StandardCopyOption.REPLACE_EXISTING;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.awaitility.Awaitility.await;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.security.interfaces.EdECPublicKey;
import java.time.Duration;
import java.time.Instant;
import java.util.List;
import java.util.concurrent.atomic.AtomicLong;
import org.jose4j.jwa.AlgorithmConstraints;
import org.jose4j.jwa.AlgorithmConstraints.ConstraintType;
import org.jose4j.jwk.JsonWebKey;
import org.jose4j.jws.AlgorithmIdentifiers;
import org.jose4j.jws.JsonWebSignature;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestInfo;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.condition.EnabledOnOs;
import org.junit.jupiter.api.condition.OS;
import org.junit.jupiter.api.io.TempDir;
import org.thumbseal.json.Canonical;
import org.thumbseal.link.HostClock;
import org.thumbseal.link.PtyPair;
import org.thumbseal.simulate.Simulation;
import org.thumbseal.simulate.SimulationKind;
import org.thumbseal.simulate.TestTruth;
import picocli.CommandLine;
import tools.jackson.databind.node.ObjectNode;

/**
 * From wire to sealed verdict as it will be used: {@code simulate} in real time on one end of a
 * pseudo-terminal pair, {@code watch} in a process of its own on the other. The run is made once,
 * 50 s long, and looked at from all sides.
 */
@Timeout(180)
@EnabledOnOs(value = OS.LINUX, disabledReason = "skipped: pseudo-terminals of socat are for Linux")
class RealTimeWatchTest {
  /** Sound, at 50 Hz; it is over after 49 s, which no other of the first ten is. */
  private static final long SEED = 2;

  private static final TestTruth TRUTH = Simulation.of(SimulationKind.SOUND, SEED).truth().get(0);
  private static final Path SCRIPT = Path.of("src/docs/verify-with-openssl.sh");

  @TempDir private static Path folder;
  private static Path key;
  private static Path results;
  private static Path document;
  private static String said = "";
  private static String noticed = "";
  private static int exitCode;
  private static long releaseToDiskMillis;

  @BeforeAll
  static void oneTestInRealTime() throws Exception {
    key = folder.resolve("keys/k.pem");
    results = folder.resolve("results");
    try (PtyPair pair = PtyPair.in(folder);
        ProgramProcess watch = ProgramProcess.watch(folder, pair.port(), results, key)) {
      watch.awaitOpen(Path.of(pair.port()));
      NotingClock clock = new NotingClock();
      Thread sensor = new Thread(() -> simulate(clock, folder.resolve("far")), "sensor");
      sensor.start();
      ResultFiles files = new ResultFiles(results);
      await()
          .pollInterval(Duration.ofMillis(5))
          .atMost(Duration.ofNanos(releaseNanos()).plusSeconds(20))
          .until(() -> !files.documents().isEmpty());
      releaseToDiskMillis = (System.nanoTime() - clock.began() - releaseNanos()) / 1_000_000;
      document = files.documents().get(0);
      sensor.join();
      watch.signal("TERM");
      exitCode = watch.awaitEnd();
      said = watch.out();
      noticed = watch.err();
    }
  }

  private static void simulate(HostClock clock, Path port) {
    OutputStream nowhere = OutputStream.nullOutputStream();
    Streams streams = new Streams(InputStream.nullInputStream(), nowhere, nowhere);
    new CommandLine(new SimulateCommand(streams, clock))
        .execute("sound", "--seed", SEED + "", "--port", port.toString());
  }

  /** When the first line that tells of the release was due on the wire. */
  private static long releaseNanos() {
    var lines = Simulation.of(SimulationKind.SOUND, SEED).lines();
    long micros = 0;
    while (micros < TRUTH.endedAt() * 1e6) {
      micros = lines.next().hostMicros();
    }
    return micros * 1_000;
  }

  /** Remembers when it was first asked, which is when the simulated sensor began. */
  private static final class NotingClock implements HostClock {
    private final HostClock system = HostClock.system();
    private final AtomicLong first = new AtomicLong();

    long began() {
      return first.get();
    }

    @Override
    public Instant wall() {
      return system.wall();
    }

    @Override
    public long nanos() {
      long now = system.nanos();
      first.compareAndSet(0, now);
      return now;
    }

    @Override
    public void pause(Duration time) {
      system.pause(time);
    }
  }

  /** The promise is 1 s; here it is measured and not judged, for the machine may be loaded. */
  @Test
  void theResultComesAfterTheRelease() {
    System.out.println("release to sealed result on disk: " + releaseToDiskMillis + " ms");
    assertThat(releaseToDiskMillis).isPositive();
  }

  @Test
  void theVerdictAndTheNumbersAreTrue() throws Exception {
    ObjectNode result = ResultFiles.read(document);
    assertThat(ResultFiles.verdict(document)).isEqualTo("pass");
    assertThat(ResultFiles.reasons(document)).contains("rise-in-time", "maximum-reached");
    // The bounds of issue 2: 60 ms + 0.5 %, and 0.25 kPa.
    double rise = TRUTH.riseTime().orElseThrow();
    assertThat(measured(result, "riseTime")).isCloseTo(rise, within(0.06 + 0.005 * rise));
    assertThat(measured(result, "maximumVacuum"))
        .isCloseTo(TRUTH.maximumVacuum().orElseThrow(), within(0.25));
  }

  private static double measured(ObjectNode result, String name) {
    return result.path("measurements").path(name).path("value").doubleValue();
  }

  @Test
  void thePhasesWereToldInOrderOneLineEach() {
    List<String> phases =
        said.lines().map(l -> l.replaceFirst(".*?: ([a-z]+) +at .*", "$1")).toList();
    assertThat(phases).startsWith("idle", "open", "rise", "hold", "release");
    assertThat(said.lines().filter(l -> l.contains(": PASS SP-014, rise "))).hasSize(1);
    assertThat(said.lines().map(String::strip)).contains(document.toString());
  }

  @Test
  void itStoppedInOrder() throws Exception {
    assertThat(exitCode).isZero();
    assertThat(noticed.lines().map(l -> l.replaceFirst("made a signing key.*", "made a key")))
        .satisfiesExactly(
            line -> assertThat(line).isEqualTo("thumbseal: made a key"),
            line ->
                assertThat(line)
                    .isEqualTo("thumbseal: " + folder.resolve("near") + ": a sensor is speaking"),
            line ->
                assertThat(line)
                    .startsWith("thumbseal: health: 1 test graded, 1 stored, 0 waiting, 0 lost; ")
                    .contains(", 0 rejected, 0 dropped; disk ok since "));
    assertThat(new ResultFiles(results).documents()).hasSize(1);
  }

  @Test
  void verifySaysAGoodSealByATrustedKey() {
    CommandRun one = CommandRun.of("verify", "--key", key, document);
    assertThat(one.code()).isZero();
    assertThat(one.out()).startsWith(document + ": good seal by a trusted key");
    CommandRun all = CommandRun.of("verify", "--key", key, results);
    assertThat(all.code()).isZero();
    assertThat(all.out()).contains("1 document and 1 capture in 1 chain checked: nothing missing");
  }

  @Test
  void replayingTheStoredCaptureWithoutOptionsGivesTheSameDocument() throws Exception {
    CommandRun replay = CommandRun.of("replay", "--json", ResultFiles.capture(document));
    assertThat(replay.err()).isEmpty();
    ObjectNode live = ResultFiles.read(document);
    live.remove(List.of("ledger", "signature"));
    assertThat(replay.out()).isEqualTo(Canonical.text(live) + "\n");
  }

  /** By the words of RFC 7515 appendix F; the stored line is in RFC 8785 form already. */
  @Test
  void jose4jVerifiesIt() throws Exception {
    String stored = Files.readString(document).strip();
    String member = ",\"signature\":\"" + signature() + "\"";
    assertThat(stored).contains(member);
    assertThat(independent(stored.replace(member, "")).verifySignature()).isTrue();
    assertThat(independent(stored).verifySignature()).isFalse();
  }

  private static String signature() throws Exception {
    return ResultFiles.read(document).path("signature").stringValue();
  }

  private static JsonWebSignature independent(String content) throws Exception {
    Path jwk = folder.resolve("keys/k.jwk");
    JsonWebSignature jws = new JsonWebSignature();
    jws.setAlgorithmConstraints(
        new AlgorithmConstraints(ConstraintType.PERMIT, AlgorithmIdentifiers.EDDSA));
    jws.setCompactSerialization(signature());
    jws.setPayload(content);
    jws.setKey((EdECPublicKey) JsonWebKey.Factory.newJwk(Files.readString(jwk)).getKey());
    return jws;
  }

  @Test
  void opensslAloneVerifiesIt(TestInfo info) throws Exception {
    Path pem = folder.resolve(info.getDisplayName() + ".pem");
    Files.writeString(pem, CommandRun.of("key", "show", "--pem", "--key", key).out());
    assumeTrue(
        run("openssl", "version").matches("(?s)OpenSSL ([3-9]|\\d\\d).*"),
        "skipped: no openssl 3 here");
    assertThat(run("sh", SCRIPT.toString(), document.toString(), pem.toString()))
        .startsWith(document + ": good seal by the key ");
  }

  private static String run(String... command) throws Exception {
    try {
      Process process = new ProcessBuilder(command).redirectErrorStream(true).start();
      return new String(process.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
    } catch (IOException e) {
      return "";
    }
  }

  @Test
  void oneChangedByteIsFound(@TempDir Path copies) throws Exception {
    Path copy = Files.copy(document, copies.resolve(document.getFileName()));
    Path log = ResultFiles.capture(copy);
    Files.copy(ResultFiles.capture(document), log);
    assertThat(CommandRun.of("verify", "--key", key, copy).code()).isZero();

    flip(log, Files.size(log) / 2);
    CommandRun capture = CommandRun.of("verify", "--key", key, copy);
    assertThat(capture.code()).isEqualTo(1);
    assertThat(capture.out()).startsWith(copy + ": broken seal");

    Files.copy(ResultFiles.capture(document), log, REPLACE_EXISTING);
    flip(copy, Files.readString(copy).indexOf("SP-014"));
    CommandRun changed = CommandRun.of("verify", "--key", key, copy);
    assertThat(changed.code()).isEqualTo(1);
    assertThat(changed.out())
        .isEqualTo(copy + ": broken seal: the content is not what was signed\n");
  }

  private static void flip(Path file, long at) throws IOException {
    byte[] bytes = Files.readAllBytes(file);
    bytes[(int) at] ^= 1;
    Files.write(file, bytes);
  }
}
