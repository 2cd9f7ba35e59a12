package org.thumbseal.cli;

import static org.assertj.core.api.Assertions.assertThat;
import static org.awaitility.Awaitility.await;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;
import java.io.PrintStream;
import java.io.PrintWriter;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.thumbseal.capture.Capture;
import org.thumbseal.capture.CaptureLine;
import org.thumbseal.capture.CaptureReader;
import org.thumbseal.link.ManualClock;
import org.thumbseal.link.PtyPair;
import org.thumbseal.simulate.Simulation;
import org.thumbseal.simulate.SimulationKind;
import org.thumbseal.simulate.TimedLine;
import org.thumbseal.wire.LineAssembler;
import picocli.CommandLine;
import picocli.CommandLine.ParseResult;

class SimulateCommandTest {
  private final ByteArrayOutputStream out = new ByteArrayOutputStream();
  private final ByteArrayOutputStream err = new ByteArrayOutputStream();
  private final ManualClock clock = new ManualClock();

  @TempDir private Path folder;

  private int run(String... args) {
    return run(out, args);
  }

  private int run(OutputStream standardOutput, String... args) {
    PrintStream print = new PrintStream(standardOutput, true, StandardCharsets.UTF_8);
    PrintStream errors = new PrintStream(err, true, StandardCharsets.UTF_8);
    Streams streams = new Streams(new ByteArrayInputStream(new byte[0]), print, errors);
    return new CommandLine(new SimulateCommand(streams, clock))
        .setOut(writer(print))
        .setErr(writer(errors))
        .setExecutionExceptionHandler(SimulateCommandTest::failed)
        .execute(args);
  }

  private static int failed(Exception e, CommandLine command, ParseResult parsed) {
    command.getErr().println(e.getMessage());
    return ((Failure) e).exitCode();
  }

  private static PrintWriter writer(PrintStream stream) {
    return new PrintWriter(stream, true, StandardCharsets.UTF_8);
  }

  private String firstError() {
    return err.toString(StandardCharsets.UTF_8).lines().findFirst().orElse("");
  }

  private static List<String> lines(SimulationKind kind, long seed) {
    List<String> lines = new ArrayList<>();
    Simulation.of(kind, seed).lines().forEachRemaining(l -> lines.add(l.line()));
    return lines;
  }

  private static List<String> cut(byte[] bytes) {
    List<String> lines = new ArrayList<>();
    new LineAssembler(lines::add).accept(bytes, 0, bytes.length);
    return lines;
  }

  private Path file(String name) {
    return folder.resolve(name);
  }

  @Test
  void standardOutputGetsTheBareLines() {
    assertThat(run("sound", "--seed", "4")).isZero();

    assertThat(cut(out.toByteArray())).isEqualTo(lines(SimulationKind.SOUND, 4));
    assertThat(clock.pauses()).isEmpty();
    assertThat(err.size()).isZero();
  }

  @Test
  void fileIsACaptureThatSaysItIsSimulated() throws Exception {
    assertThat(run("noisy-line", "--asset", "DEMO-1", "--out", file("a.log").toString())).isZero();

    Capture capture = CaptureReader.read(Files.readAllBytes(file("a.log")));
    assertThat(capture.unreadable()).isZero();
    assertThat(capture.lines())
        .extracting(CaptureLine::text)
        .isEqualTo(lines(SimulationKind.NOISY_LINE, 1));
    assertThat(capture.header().started()).isEqualTo(Instant.parse("2026-03-02T07:15:00Z"));
    assertThat(capture.header().fact("asset")).contains("DEMO-1");
    assertThat(capture.header().fact("source")).contains("sim:noisy-line");
    assertThat(capture.header().fact("note")).contains("simulated, seed 1: no pump was tested");
    assertThat(out.size()).isZero();
  }

  @Test
  void sameSeedSameFile() throws IOException {
    run("leak", "--seed", "9", "--out", file("a.log").toString());
    run("leak", "--seed", "9", "--out", file("b.log").toString());

    assertThat(file("a.log")).hasSameBinaryContentAs(file("b.log"));
  }

  @Test
  void headerNamesTheJarAndNotWhatIsLeftInIt() throws Exception {
    run("reduced-volume", "--jar-l", "2.5", "--out", file("a.log").toString());

    Capture capture = CaptureReader.read(Files.readAllBytes(file("a.log")));
    assertThat(capture.header().fact("jar-l")).contains("2.5");
  }

  @Test
  void realTimeWaitsAsLongAsTheRecordingLasts() throws Exception {
    run("released-early", "--real-time", "--out", file("a.log").toString());

    Capture capture = CaptureReader.read(Files.readAllBytes(file("a.log")));
    CaptureLine last = capture.lines().get(capture.lines().size() - 1);
    assertThat(clock.nanos()).isEqualTo(last.hostMicros() * 1_000);
    assertThat(clock.pauses()).hasSizeGreaterThan(100);
  }

  @Test
  void realTimeLetsEachLineOutWhenItIsDue() {
    List<Integer> sizes = new ArrayList<>();
    OutputStream watched =
        new OutputStream() {
          @Override
          public void write(int octet) {
            out.write(octet);
          }

          @Override
          public void flush() {
            sizes.add(clock.pauses().size());
          }
        };
    run(watched, "released-early", "--real-time");

    assertThat(sizes).contains(0, 1, 2, 3);
  }

  @Test
  void truthIsWrittenBesideTheLines() throws IOException {
    Locale before = Locale.getDefault();
    try {
      Locale.setDefault(Locale.forLanguageTag("ar-EG"));
      assertThat(run("two-tests", "--seed", "3", "--truth", file("t.json").toString())).isZero();
    } finally {
      Locale.setDefault(before);
    }

    var truth = Simulation.of(SimulationKind.TWO_TESTS, 3).truth();
    String json = Files.readString(file("t.json"));
    assertThat(json).contains("\"kind\": \"two-tests\"", "\"seed\": 3");
    assertThat(json.lines().filter(l -> l.contains("riseTime"))).hasSize(2);
    assertThat(json)
        .contains("\"riseTime\": " + rounded(truth.get(1).riseTime().orElseThrow()))
        .contains("\"occludedAt\": " + rounded(truth.get(1).occludedAt()));
  }

  private static String rounded(double value) {
    return String.format(Locale.ROOT, "%.4f", value);
  }

  @Test
  void truthSaysWhatIsWrongAndTheSoundTwinThatNothingWas() throws IOException {
    run("leak", "--seed", "3", "--truth", file("leak.json").toString());
    run("leak", "--seed", "3", "--sound-twin", "--truth", file("twin.json").toString());

    var plant = Simulation.of(SimulationKind.LEAK, 3).truth().get(0).plant();
    assertThat(Files.readString(file("leak.json")))
        .contains("\"leak\": " + rounded(plant.leakLitresPerMinute()))
        .contains("\"fault\": \"leak\", \"severity\": " + rounded(plant.fault().severity()));
    assertThat(Files.readString(file("twin.json")))
        .contains("\"speed\": " + rounded(plant.pump().litresPerMinute()))
        .contains("\"leak\": 0.0000", "\"fault\": \"none\", \"severity\": 0.0000");
  }

  @Test
  void truthOfNoTestIsAnEmptyList() throws IOException {
    run("never-blocked", "--truth", file("t.json").toString());

    assertThat(Files.readString(file("t.json")).replaceAll("\\s", ""))
        .isEqualTo("{\"kind\":\"never-blocked\",\"seed\":1,\"tests\":[]}");
  }

  @Test
  void repeatGoesFromPumpToPump() throws IOException {
    run("sound", "--repeat", "3", "--rate", "10", "--truth", file("t.json").toString());

    assertThat(Files.readString(file("t.json")).lines().filter(l -> l.contains("riseTime")))
        .hasSize(3)
        .doesNotHaveDuplicates();
  }

  @Test
  void listNamesEveryKind() {
    assertThat(run("--list")).isZero();

    assertThat(out.toString(StandardCharsets.UTF_8).lines())
        .hasSize(SimulationKind.values().length)
        .anyMatch(l -> l.matches("worn-pump +leaking valves.*"));
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "odd|no kind 'odd'; there are sound, slow,",
        "sound --rate 5|rate must be between 10 and 1000 Hz, not 5",
        "sound --jar-l NaN|jar volume must be between 0.3 and 5 L, not NaN",
        "sound --altitude-m 9000|altitude must be between -500 and 5000 m, not 9000",
        "sound --repeat 0|times to repeat must be 1 to 1000, not 0",
        "idle --idle-s 0|idle time must be between 1 and 10000000 s, not 0",
        "sound --real-time --at-once|--real-time and --at-once exclude each other",
        "sound --out a --port b|--out and --port exclude each other",
        "--seed 3|name what to simulate: sound, slow,"
      })
  void wrongUseIsOneLineAndTwo(String args, String message) {
    assertThat(run(args.split(" "))).isEqualTo(2);
    assertThat(firstError()).startsWith(message);
    assertThat(out.size()).isZero();
  }

  @Test
  void aFileIsNoPort() throws IOException {
    Path file = Files.createFile(file("plain"));

    assertThat(run("sound", "--port", file.toString())).isEqualTo(2);
    assertThat(firstError()).endsWith("is a file, not a port: use --out to write a capture file");
  }

  @Test
  void whatTheMachineRefusesIsOneLineAndThree() {
    assertThat(run("sound", "--out", folder.toString())).isEqualTo(3);
    assertThat(run("sound", "--out", file("none/a.log").toString())).isEqualTo(3);
    assertThat(run("sound", "--port", file("ttyNONE").toString())).isEqualTo(3);

    assertThat(err.toString(StandardCharsets.UTF_8).lines().toList())
        .satisfiesExactly(
            l -> assertThat(l).startsWith(folder + " cannot be written: "),
            l -> assertThat(l).endsWith("cannot be opened: there is no such port or folder"),
            l -> assertThat(l).contains("ttyNONE cannot be opened"));
  }

  @Test
  void aReaderThatHasGoneEndsIt() {
    OutputStream gone =
        new OutputStream() {
          @Override
          public void write(int octet) throws IOException {
            throw new IOException("Broken pipe");
          }
        };

    assertThat(run(gone, "sound")).isEqualTo(3);
    assertThat(firstError()).isEqualTo("writing stopped: nobody reads standard output any more");
  }

  /** A port is written in real time unless told otherwise. */
  @Test
  void deviceGetsTheLinesWhenTheyAreDue() {
    assumeTrue(Files.exists(Path.of("/dev/null")), "skipped: no /dev/null here");

    assertThat(run("released-early", "--port", "/dev/null")).isZero();
    List<TimedLine> lines = new ArrayList<>();
    Simulation.of(SimulationKind.RELEASED_EARLY, 1).lines().forEachRemaining(lines::add);
    assertThat(clock.nanos()).isEqualTo(lines.get(lines.size() - 1).hostMicros() * 1_000);

    int waited = clock.pauses().size();
    assertThat(run("released-early", "--port", "/dev/null", "--at-once")).isZero();
    assertThat(clock.pauses()).hasSize(waited);
  }

  @Test
  void pseudoTerminalCarriesTheBytes() throws Exception {
    List<String> expected = lines(SimulationKind.RELEASED_EARLY, 1);
    try (PtyPair pair = PtyPair.in(folder);
        InputStream near = Files.newInputStream(Path.of(pair.port()))) {
      String far = folder.resolve("far").toString();
      Thread sensor = new Thread(() -> run("released-early", "--at-once", "--port", far));
      sensor.start();
      List<String> seen = new ArrayList<>();
      await()
          .atMost(Duration.ofSeconds(30))
          .until(() -> read(near, expected.size(), seen) >= expected.size());
      sensor.join();
      assertThat(seen).isEqualTo(expected);
    }
  }

  private static int read(InputStream from, int wanted, List<String> seen) throws IOException {
    LineAssembler assembler = new LineAssembler(seen::add);
    byte[] buffer = new byte[4096];
    while (seen.size() < wanted) {
      int count = from.read(buffer);
      assembler.accept(buffer, 0, Math.max(0, count));
    }
    return seen.size();
  }
}
