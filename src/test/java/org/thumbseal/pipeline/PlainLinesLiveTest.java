package org.thumbseal.pipeline;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.EnumSource;
import org.thumbseal.capture.Capture;
import org.thumbseal.capture.CaptureHeader;
import org.thumbseal.capture.CaptureLine;
import org.thumbseal.capture.CaptureReader;
import org.thumbseal.grade.Reason;
import org.thumbseal.grade.ReasonCode;
import org.thumbseal.grade.Verdict;
import org.thumbseal.json.Canonical;
import org.thumbseal.json.ResultTree;
import org.thumbseal.measurement.Contribution;
import org.thumbseal.record.ResultDocument;
import org.thumbseal.seal.Sha256;
import org.thumbseal.simulate.Simulation;
import org.thumbseal.simulate.SimulationKind;

/** Boards that print numbers, on simulated pumps whose truth is known. */
class PlainLinesLiveTest {
  private static CaptureHeader header(PlainSensor sensor) {
    return new CaptureHeader(
        Instant.parse("2026-03-02T07:15:00Z"),
        Map.of("source", "board", CaptureHeader.FORMAT, sensor.format()));
  }

  private static List<ResultDocument> grade(Capture capture) {
    return Grader.grade(
        capture,
        Grader.Source.capture("x.log", Sha256.hex(capture.format())),
        GradingSettings.DEFAULT);
  }

  private static ResultDocument only(PlainSensor sensor) {
    List<ResultDocument> results = grade(new Capture(header(sensor), sensor.lines(), 0));
    assertThat(results).hasSize(1);
    return results.get(0);
  }

  private static List<String> json(List<ResultDocument> results) {
    return results.stream().map(r -> Canonical.text(ResultTree.of(r))).toList();
  }

  @ParameterizedTest
  @CsvSource({"true, 1", "true, 2", "true, 3", "false, 1", "false, 2", "false, 3"})
  void liveAndReplayAreTheSame(boolean timed, int seed) throws Exception {
    PlainSensor sensor = PlainSensor.of(SimulationKind.TWO_TESTS, seed, timed);
    List<Capture> captures = new ArrayList<>();
    LiveStream live = new LiveStream(header(sensor), new Heard(phase -> {}, captures::add));
    sensor.lines().forEach(line -> live.accept(line.hostMicros(), line.text()));
    live.end();

    assertThat(captures).hasSize(2);
    for (Capture capture : captures) {
      Capture stored = CaptureReader.read(capture.format());
      assertThat(stored.header().fact("format")).contains(sensor.format());
      assertThat(json(grade(stored))).hasSize(1).isEqualTo(json(grade(capture)));
      assertThat(reasons(grade(stored).get(0))).contains(ReasonCode.UNCHECKED_LINE);
    }
  }

  private static List<ReasonCode> reasons(ResultDocument result) {
    return result.grade().reasons().stream().map(Reason::code).toList();
  }

  @ParameterizedTest
  @CsvSource({
    "true, 1",
    "true, 2",
    "true, 3",
    "true, 4",
    "false, 1",
    "false, 2",
    "false, 3",
    "false, 4"
  })
  void aSoundPumpPassesAndTheTruthIsWithinTheUncertainty(boolean timed, int seed) {
    ResultDocument result = only(PlainSensor.of(SimulationKind.SOUND, seed, timed));
    double truth =
        Simulation.of(SimulationKind.SOUND, seed).truth().get(0).riseTime().orElseThrow();
    var rise = result.measurement().orElseThrow().riseTime().orElseThrow();

    assertThat(result.grade().verdict()).isEqualTo(Verdict.PASS);
    assertThat(rise.value()).isCloseTo(truth, within(2 * rise.standardUncertainty()));
  }

  /** Two ends, each late by 0 to 0.1 s: triangular of half width 0.1 s, 0.1/sqrt(6) (GUM 4.3.9). */
  @Test
  void arrivalIsInTheBudgetWhereThereIsNoOtherTime() {
    var arrival = only(PlainSensor.of(SimulationKind.SOUND, 1, false)).measurement().orElseThrow();
    var timed = only(PlainSensor.of(SimulationKind.SOUND, 1, true)).measurement().orElseThrow();

    assertThat(arrival.riseTime().orElseThrow().budget())
        .filteredOn(c -> c.name().equals("arrival"))
        .extracting(Contribution::standardUncertainty)
        .singleElement()
        .satisfies(u -> assertThat(u).isCloseTo(0.040825, within(1e-6)));
    assertThat(arrival.occludedAt().budget()).extracting(Contribution::name).contains("arrival");
    assertThat(timed.riseTime().orElseThrow().budget())
        .extracting(Contribution::name)
        .doesNotContain("arrival");
  }

  /** One line in fifty is damaged: no pump that fails may pass for it, none may be lost for it. */
  @ParameterizedTest
  @EnumSource(names = {"SLOW", "LEAK", "WORN_PUMP", "CONTROL_NOT_AT_MAXIMUM", "NO_VACUUM"})
  void noDamageMakesABadPumpPass(SimulationKind kind) {
    for (int seed = 1; seed <= 6; seed++) {
      PlainSensor whole = PlainSensor.of(kind, seed, seed % 2 == 0);
      PlainSensor damaged = damaged(whole, new Random(seed), 0.02);
      List<ResultDocument> results = grade(new Capture(header(damaged), damaged.lines(), 0));
      assertThat(results).as("%s, seed %d", kind, seed).isNotEmpty();
      assertThat(results)
          .as("%s, seed %d", kind, seed)
          .noneMatch(r -> r.grade().verdict() == Verdict.PASS);
    }
  }

  @Test
  void damageLeavesTheAnswerOfASoundPumpAlone() {
    for (int seed = 1; seed <= 6; seed++) {
      PlainSensor whole = PlainSensor.of(SimulationKind.SOUND, seed, true);
      ResultDocument clean = only(whole);
      ResultDocument dirty = only(damaged(whole, new Random(seed), 0.01));
      assertThat(dirty.grade().verdict()).as("seed %d", seed).isEqualTo(Verdict.PASS);
      assertThat(dirty.evidence().rejected()).containsKeys("malformed", "implausible");
      assertThat(dirty.measurement().orElseThrow().riseTime().orElseThrow().value())
          .as("rise time, seed %d", seed)
          .isCloseTo(
              clean.measurement().orElseThrow().riseTime().orElseThrow().value(), within(0.03));
      assertThat(dirty.measurement().orElseThrow().maximumVacuum().orElseThrow().value())
          .as("maximum, seed %d", seed)
          .isCloseTo(
              clean.measurement().orElseThrow().maximumVacuum().orElseThrow().value(),
              within(0.08));
    }
  }

  private static PlainSensor damaged(PlainSensor whole, Random random, double share) {
    List<CaptureLine> lines = new ArrayList<>();
    for (CaptureLine line : whole.lines()) {
      String text = random.nextDouble() < share ? damaged(line.text(), random) : line.text();
      text.lines().forEach(part -> lines.add(new CaptureLine(line.hostMicros(), part)));
    }
    return new PlainSensor(whole.timed(), lines);
  }

  /** A byte lost, doubled, made another digit, or made anything, a line end too. */
  private static String damaged(String text, Random random) {
    int at = random.nextInt(text.length());
    String before = text.substring(0, at);
    String behind = text.substring(at + 1);
    return switch (random.nextInt(5)) {
      case 0 -> before + behind;
      case 1 -> before + text.charAt(at) + text.charAt(at) + behind;
      case 2 -> before + "\n" + behind;
      case 3 -> before + (char) random.nextInt(256) + behind;
      default -> before + (char) ('0' + random.nextInt(10)) + behind;
    };
  }
}
