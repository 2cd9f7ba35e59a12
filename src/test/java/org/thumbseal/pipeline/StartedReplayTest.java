package org.thumbseal.pipeline;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.thumbseal.capture.Capture;
import org.thumbseal.capture.CaptureHeader;
import org.thumbseal.capture.CaptureLine;
import org.thumbseal.capture.CaptureReader;
import org.thumbseal.grade.Reason;
import org.thumbseal.grade.ReasonCode;
import org.thumbseal.grade.Verdict;
import org.thumbseal.json.Canonical;
import org.thumbseal.json.ResultTree;
import org.thumbseal.record.ResultDocument;
import org.thumbseal.record.TestFacts;
import org.thumbseal.seal.Sha256;
import org.thumbseal.simulate.Conditions;
import org.thumbseal.simulate.Simulation;
import org.thumbseal.simulate.SimulationKind;
import org.thumbseal.visit.StartedBy;
import org.thumbseal.wire.Crc16;

/** Starts by key and by what the header says: the same live and from the stored capture. */
class StartedReplayTest {
  private static final CaptureHeader HEADER =
      new CaptureHeader(
          Instant.parse("2026-03-02T07:15:00Z"),
          Map.of("source", "sim:test", "check-jar", "replaced; reason: cracked"));
  private static final long SECOND = 1_000_000;

  private final List<Capture> captures = new ArrayList<>();
  private LiveStream live = live();
  private long now;

  private LiveStream live() {
    return new LiveStream(HEADER, new Heard(phase -> {}, captures::add));
  }

  @BeforeEach
  void idle() {
    live = live();
    hear(idling(30));
  }

  /** A sensor at rest, 50 Hz; the simulator's own seconds, so that clocks go on. */
  private static List<CaptureLine> idling(double seconds) {
    return lines(SimulationKind.IDLE, OptionalDouble.of(seconds));
  }

  private static List<CaptureLine> lines(SimulationKind kind, OptionalDouble seconds) {
    Conditions conditions =
        new Conditions(
            OptionalDouble.of(0.5), OptionalDouble.empty(), OptionalDouble.of(20), seconds);
    List<CaptureLine> lines = new ArrayList<>();
    Simulation.of(kind, 3, conditions)
        .lines()
        .forEachRemaining(line -> lines.add(new CaptureLine(line.hostMicros(), line.line())));
    return lines;
  }

  private void hear(List<CaptureLine> lines) {
    for (CaptureLine line : lines) {
      now = line.hostMicros();
      live.accept(now, line.text());
    }
  }

  private void key() {
    live.accept(now, Crc16.seal("K,1,1"));
  }

  private void page() {
    live.header(
        live.capture().header().with("start", live.start(StartedBy.PAGE).orElseThrow().text()));
  }

  private void idleFrom(double from, double to) {
    hear(idling(to).stream().filter(line -> line.hostMicros() > from * SECOND).toList());
  }

  /** Each capture graded as it is stored; it must be no other when it is read again. */
  private List<ResultDocument> results() throws Exception {
    List<ResultDocument> results = new ArrayList<>();
    for (Capture capture : captures) {
      byte[] file = capture.format();
      List<ResultDocument> graded = grade(capture, file);
      assertThat(json(grade(CaptureReader.read(file), file))).isEqualTo(json(graded));
      assertThat(graded).hasSize(1);
      results.addAll(graded);
    }
    return results;
  }

  private static List<ResultDocument> grade(Capture capture, byte[] file) {
    return Grader.grade(
        capture, Grader.Source.capture("x.log", Sha256.hex(file)), GradingSettings.DEFAULT);
  }

  private static List<String> json(List<ResultDocument> results) {
    return results.stream().map(r -> Canonical.text(ResultTree.of(r))).toList();
  }

  private ResultDocument onlyResult() throws Exception {
    assertThat(captures).hasSize(1);
    return results().get(0);
  }

  private static void assertNotBlocked(ResultDocument result, StartedBy by, double at) {
    assertThat(result.grade().verdict()).isEqualTo(Verdict.INVALID);
    assertThat(result.grade().reasons())
        .extracting(Reason::code)
        .containsExactly(ReasonCode.NOT_BLOCKED);
    assertThat(result.measurement()).isEmpty();
    assertThat(result.checks()).hasSize(7);
    TestFacts.Start start = result.test().start().orElseThrow();
    assertThat(start.by()).isEqualTo(by);
    assertThat(start.at()).isBetween(at - 0.3, at + 0.3);
    assertThat(ResultTree.of(result).at("/test").has("occludedAt")).isFalse();
    assertThat(ResultTree.of(result).at("/measurements").has("riseTime")).isFalse();
  }

  @Test
  void ninetySecondsAfterTheKeyThereIsAResult() throws Exception {
    key();
    idleFrom(30, 119);
    assertThat(captures).isEmpty();
    idleFrom(119, 121);

    assertNotBlocked(onlyResult(), StartedBy.KEY, 30);
  }

  @Test
  void ninetySecondsAfterTheButtonThereIsAResult() throws Exception {
    page();
    idleFrom(30, 121);

    assertNotBlocked(onlyResult(), StartedBy.PAGE, 30);
  }

  @Test
  void aNewerStartTakesThePlaceOfTheOlder() throws Exception {
    key();
    idleFrom(30, 80);
    page();
    idleFrom(80, 169);
    assertThat(captures).isEmpty();
    idleFrom(169, 171);

    assertNotBlocked(onlyResult(), StartedBy.PAGE, 80);
  }

  @Test
  void aRecordThatEndsBeforeHasNoResult() {
    key();
    idleFrom(30, 119);
    live.end();

    Capture whole = live.capture();
    assertThat(captures).isEmpty();
    assertThat(grade(whole, whole.format())).isEmpty();
  }

  /** Nobody knows what was done while nothing came. */
  @Test
  void aSilenceEndsAStart() {
    page();
    idleFrom(60, 200);

    Capture whole = live.capture();
    assertThat(captures).isEmpty();
    assertThat(grade(whole, whole.format())).isEmpty();
  }

  /** The lines that are forgotten take the start with them, not the test that follows. */
  @Test
  void aStartIsKeptAsLongAsItWaits() throws Exception {
    idleFrom(30, 300);
    key();
    idleFrom(300, 391);

    ResultDocument result = onlyResult();
    double first =
        captures.get(0).lines().stream()
                .filter(line -> line.text().startsWith("S,"))
                .findFirst()
                .orElseThrow()
                .hostMicros()
            / (double) SECOND;
    assertNotBlocked(result, StartedBy.KEY, 300 - first);
    idleFrom(391, 600);
    assertThat(captures).hasSize(1);
  }

  @Test
  void aTestNamesTheStartBeforeIt() throws Exception {
    live = live();
    List<CaptureLine> test = lines(SimulationKind.ALREADY_RUNNING, OptionalDouble.empty());
    hear(test.subList(0, 40));
    page();
    hear(test.subList(40, test.size()));
    live.end();

    ResultDocument result = onlyResult();
    assertThat(result.grade().verdict()).isNotEqualTo(Verdict.INVALID);
    assertThat(result.test().start()).map(TestFacts.Start::by).contains(StartedBy.PAGE);
  }

  @Test
  void aStartWithTheInletBlockedDoesNothing() throws Exception {
    live = live();
    List<CaptureLine> test = lines(SimulationKind.ALREADY_RUNNING, OptionalDouble.empty());
    for (CaptureLine line : test) {
      boolean before = live.isBlocked();
      hear(List.of(line));
      if (live.isBlocked() && !before) {
        key();
      }
    }
    live.end();

    assertThat(live.waiting()).isEmpty();
    assertThat(onlyResult().test().start()).isEmpty();
  }
}
