package org.thumbseal.cli;

import static org.assertj.core.api.Assertions.assertThat;
import static org.awaitility.Awaitility.await;

import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.condition.EnabledOnOs;
import org.junit.jupiter.api.condition.OS;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.thumbseal.capture.CaptureLine;
import org.thumbseal.json.JsonGate;
import org.thumbseal.link.PtyPair;
import org.thumbseal.pipeline.PlainSensor;
import org.thumbseal.simulate.SimulationKind;
import tools.jackson.databind.node.ObjectNode;

/** {@code --format}: boards that print numbers, through the commands. */
class PlainLinesCommandTest {
  private static final PlainSensor BOARD = PlainSensor.of(SimulationKind.SOUND, 2, true);
  private static final String TEXT =
      BOARD.lines().stream().map(CaptureLine::text).collect(Collectors.joining("\r\n", "", "\r\n"));

  @TempDir private Path folder;

  private Path saved() throws Exception {
    return Files.writeString(folder.resolve("board.txt"), TEXT);
  }

  @Test
  void bareLinesAreReplayedByTheirOwnTime() throws Exception {
    CommandRun run = CommandRun.of("replay", saved(), "--json", "--format", BOARD.format());

    assertThat(run.err()).isEmpty();
    assertThat(run.code()).isZero();
    assertThat(run.out())
        .contains("\"unchecked-line\"", "\"columns\":\"" + BOARD.format() + "\"")
        .contains("\"verdict\":\"pass\"")
        .doesNotContain("startedAt");
  }

  @Test
  void aCaptureTakesItsFormatFromItsHeaderWhateverIsSaid() {
    Path capture = Path.of("fixtures", "captures", "plain-lines.log");
    CommandRun run =
        CommandRun.of("replay", capture, "--format", "lines:column=1,unit=Pa,sign=vacuum");

    assertThat(run.code()).isZero();
    assertThat(run.out()).contains("PASS", "(3 of ");
    assertThat(run.err()).contains("--format is not heeded").hasLineCount(1);
  }

  @Test
  void aFormatThatTheHeaderOrTheProtocolHasAnywayIsSaidToo() {
    Path plain = Path.of("fixtures", "captures", "plain-lines.log");
    String own = CaptureFile.header(plain).orElseThrow().fact("format").orElseThrow();
    assertThat(CommandRun.of("replay", plain, "--format", own).err())
        .contains("says the same format; --format is not needed")
        .hasLineCount(1);
    assertThat(
            CommandRun.of("replay", Path.of("fixtures", "captures", "sound.log"), "--format", own)
                .err())
        .contains("(the wire protocol); --format is not heeded")
        .hasLineCount(1);
  }

  @Test
  void theSensorThatWasNamedIsInTheDocumentWhenItsCalibrationWasUsed() throws Exception {
    Path results = folder.resolve("results");
    List<Object> calibrate = new ArrayList<>(List.of("calibrate", "--sensor", "BOARD-1"));
    calibrate.addAll(List.of("--reference", "RG-7", "--certificate", "C-2211"));
    calibrate.addAll(List.of("--reference-uncertainty", "0.25 kPa", "--results", results));
    calibrate.addAll(List.of("--key", folder.resolve("keys/k.pem"), "--pair", "0=0", "80=81"));
    assertThat(CommandRun.of(calibrate.toArray()).code()).isZero();

    assertThat(graded("BOARD-1", results).at("/test/sensor/id").asString()).isEqualTo("BOARD-1");
    assertThat(graded("BOARD-2", results).at("/test/sensor").has("id")).isFalse();
  }

  private ObjectNode graded(String sensor, Path calibrations) throws Exception {
    List<Object> args = new ArrayList<>(List.of("replay", saved(), "--json", "--sensor", sensor));
    args.addAll(List.of("--format", BOARD.format(), "--calibrations", calibrations));
    args.addAll(List.of("--key", folder.resolve("keys/k.pem")));
    return Answer.to(args.toArray()).onlyDocument();
  }

  @Test
  void aFormatThatFitsNoLineIsSaid() throws Exception {
    CommandRun run =
        CommandRun.of(
            "watch",
            "--port",
            "file:" + saved(),
            "--page",
            "off",
            "--results",
            folder.resolve("results"),
            "--key",
            folder.resolve("keys/k.pem"),
            "--format",
            "lines:column=7,time=1:ms,unit=kPa,sign=gauge");

    assertThat(run.err()).contains("no good line").contains("--format");
  }

  @ParameterizedTest
  @CsvSource(
      delimiterString = " | ",
      value = {
        "replay x --format columns | --format: 'columns' is not known; write lines:column=N",
        "replay x --columns time=1:s --format lines:column=1,unit=Pa,sign=gauge | give one of them",
        "watch --port auto --format lines:column=1,unit=Pa,sign=gauge | name the port",
        "watch --port sim:sound --format lines:column=1,unit=Pa,sign=gauge | leave it out",
        "watch --port file:x --format lines:column=1,unit=Pa,sign=gauge | needs the board's own time",
        "watch --port file:x --sensor a,b | --sensor must be 1 to 32 plain characters",
      })
  void aMistakeIsOneLine(String arguments, String says) {
    CommandRun run = CommandRun.of((Object[]) arguments.split(" "));
    assertThat(run.code()).isEqualTo(2);
    assertThat(run.err()).startsWith("thumbseal: ").contains(says).hasLineCount(1);
  }

  @Test
  void bareLinesWithoutTimeOrFitAreRefused() throws Exception {
    CommandRun untimed =
        CommandRun.of("replay", saved(), "--format", "lines:column=2,unit=kPa,sign=gauge");
    CommandRun other =
        CommandRun.of(
            "replay", saved(), "--format", "lines:column=3,time=1:us,unit=kPa,sign=gauge");

    assertThat(untimed.code()).isEqualTo(2);
    assertThat(untimed.err()).contains("needs the board's own time (time=...)").hasLineCount(1);
    assertThat(other.code()).isEqualTo(2);
    assertThat(other.err()).contains("no line fits lines:column=3").hasLineCount(1);
  }

  /** The board talks faster than life, so that the test need not last a minute. */
  @Test
  @Timeout(120)
  @EnabledOnOs(
      value = OS.LINUX,
      disabledReason = "skipped: pseudo-terminals of socat are for Linux")
  void aBoardOnAPortIsWatchedAndItsCaptureReplaysToTheSameAnswer() throws Exception {
    Path results = folder.resolve("results");
    ResultFiles files = new ResultFiles(results);
    try (PtyPair pair = PtyPair.in(folder);
        ProgramProcess watch = watch(pair, results)) {
      // What comes while a port is still being set up is lost, and here that would be all of it.
      watch.awaitErr("nothing comes");
      pair.send(TEXT.getBytes(StandardCharsets.US_ASCII));
      await().atMost(Duration.ofSeconds(60)).until(() -> !files.documents().isEmpty());
      watch.signal("TERM");
      assertThat(watch.awaitEnd()).isZero();
    }
    Path document = files.documents().get(0);
    String stored = Files.readString(document);
    Path capture = Path.of(document.toString().replace(".json", ".log"));
    ObjectNode replayed = Answer.to("replay", capture, "--json").onlyDocument();
    ObjectNode sealed = JsonGate.read(document);

    assertThat(Files.readAllLines(capture))
        .contains("# format " + BOARD.format(), "# sensor BOARD-1");
    assertThat(stored).contains("\"verdict\":\"pass\"", "unchecked-line");
    sealed.remove(List.of("ledger", "signature"));
    assertThat(sealed).isEqualTo(replayed);
  }

  private ProgramProcess watch(PtyPair pair, Path results) throws Exception {
    return ProgramProcess.start(
        folder,
        "watch",
        "--port",
        pair.port(),
        "--format",
        BOARD.format(),
        "--sensor",
        "BOARD-1",
        "--results",
        results,
        "--key",
        folder.resolve("keys/k.pem"));
  }
}
