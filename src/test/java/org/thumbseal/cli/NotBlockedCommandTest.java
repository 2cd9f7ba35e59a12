package org.thumbseal.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.thumbseal.capture.Capture;
import org.thumbseal.capture.CaptureHeader;
import org.thumbseal.capture.CaptureLine;
import org.thumbseal.simulate.Conditions;
import org.thumbseal.simulate.Simulation;
import org.thumbseal.simulate.SimulationKind;

/** A start that no blocking followed: a result without a measurement, in every command. */
class NotBlockedCommandTest {
  @TempDir private Path folder;
  private Path capture;
  private Path results;
  private Path key;

  @BeforeEach
  void ninetySecondsWithoutABlocking() throws Exception {
    results = folder.resolve("results");
    key = folder.resolve("keys/k.pem");
    Conditions conditions =
        new Conditions(
            OptionalDouble.of(0.5),
            OptionalDouble.empty(),
            OptionalDouble.of(20),
            OptionalDouble.of(110));
    List<CaptureLine> lines = new ArrayList<>();
    Simulation.of(SimulationKind.IDLE, 3, conditions)
        .lines()
        .forEachRemaining(l -> lines.add(new CaptureLine(l.hostMicros(), l.line())));
    CaptureHeader header =
        new CaptureHeader(
            Instant.parse("2026-03-02T07:15:00Z"),
            Map.of("start", "5.000000 page", "check-cord", "ok"));
    capture = Files.write(folder.resolve("started.log"), new Capture(header, lines, 0).format());
  }

  private Path stored() throws Exception {
    CommandRun run = CommandRun.of("replay", capture, "--results", results, "--key", key);
    assertThat(run.code()).isEqualTo(1);
    return new ResultFiles(results).documents().get(0);
  }

  @Test
  void explainTellsHowItWasDecidedWithoutAnyValue() {
    CommandRun run = CommandRun.of("replay", "--explain", capture);
    assertThat(run.code()).isEqualTo(1);
    assertThat(run.err()).isEmpty();
    assertThat(run.out())
        .startsWith("INVALID")
        .contains("not-blocked: The inlet was not blocked within 90 s of the start.")
        .doesNotContain("NaN", "null", "rise of");
  }

  @Test
  void itCanBeAmendedAndSaysWhatStandsNow() throws Exception {
    Path result = stored();
    CommandRun run = CommandRun.of("amend", result, "--asset", "SP-014", "--key", key);
    assertThat(run.err()).isEmpty();
    assertThat(run.out()).contains("corrected: asset unassigned -> SP-014");
    CommandRun verified = CommandRun.of("verify", result, "--key", key);
    assertThat(verified.code()).as(verified.out()).isZero();
    assertThat(verified.out()).endsWith(result + ": stands now: asset SP-014\n");
  }

  @Test
  void itsPageSaysWhatToDoAndShowsTheCurve() throws Exception {
    Path pages = folder.resolve("pages");
    CommandRun run = CommandRun.of("report", stored(), "--key", key, "-o", pages);
    assertThat(run.err()).isEmpty();
    assertThat(run.code()).isZero();
    assertThat(Files.readString(new ResultFiles(pages).files(".html").get(0)))
        .contains("<h1>INVALID</h1>", "The inlet was not blocked within 90 s", "class=\"curve\" d=")
        .doesNotContain("NaN", "null");
  }
}
