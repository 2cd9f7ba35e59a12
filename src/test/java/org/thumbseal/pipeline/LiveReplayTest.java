package org.thumbseal.pipeline;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Instant;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.MethodSource;
import org.thumbseal.capture.Capture;
import org.thumbseal.capture.CaptureFormatException;
import org.thumbseal.capture.CaptureHeader;
import org.thumbseal.capture.CaptureLine;
import org.thumbseal.capture.CaptureReader;
import org.thumbseal.json.Canonical;
import org.thumbseal.json.ResultTree;
import org.thumbseal.phase.Phase;
import org.thumbseal.phase.PhaseEvent;
import org.thumbseal.record.ResultDocument;
import org.thumbseal.seal.Sha256;
import org.thumbseal.simulate.Conditions;
import org.thumbseal.simulate.Scenario;
import org.thumbseal.simulate.Simulation;
import org.thumbseal.simulate.SimulationKind;

/** What is graded while it happens and what is graded from the stored capture are the same. */
class LiveReplayTest {
  private static final CaptureHeader HEADER =
      new CaptureHeader(Instant.parse("2026-03-02T07:15:00Z"), Map.of("source", "sim:test"));
  private static final int SEEDS = 5;

  static Stream<Arguments> recordings() {
    return Arrays.stream(SimulationKind.values())
        .filter(kind -> kind != SimulationKind.IDLE)
        .flatMap(
            kind -> IntStream.rangeClosed(1, SEEDS).mapToObj(seed -> Arguments.of(kind, seed)));
  }

  private static List<CaptureLine> lines(Scenario scenario) {
    List<CaptureLine> lines = new ArrayList<>();
    scenario
        .lines()
        .forEachRemaining(line -> lines.add(new CaptureLine(line.hostMicros(), line.line())));
    return lines;
  }

  private static List<Capture> live(List<CaptureLine> lines) {
    List<Capture> captures = new ArrayList<>();
    LiveStream stream = new LiveStream(HEADER, new Heard(phase -> {}, captures::add));
    lines.forEach(line -> stream.accept(line.hostMicros(), line.text()));
    stream.end();
    return captures;
  }

  private static List<ResultDocument> grade(Capture capture, byte[] file) {
    return Grader.grade(
        capture, Grader.Source.capture("x.log", Sha256.hex(file)), GradingSettings.DEFAULT);
  }

  private static List<String> json(List<ResultDocument> results) {
    return results.stream().map(r -> Canonical.text(ResultTree.of(r))).toList();
  }

  private static List<String> verdicts(List<ResultDocument> results) {
    return results.stream().map(r -> r.grade().verdict().code()).toList();
  }

  @ParameterizedTest
  @MethodSource("recordings")
  void eachCaptureIsOneTestAndGradesAsTheWholeRecordingDoes(SimulationKind kind, int seed)
      throws CaptureFormatException {
    List<CaptureLine> lines = lines(Simulation.of(kind, seed));
    List<Capture> captures = live(lines);
    List<String> verdicts = new ArrayList<>();

    for (Capture capture : captures) {
      byte[] file = capture.format();
      List<ResultDocument> results = grade(capture, file);
      assertThat(results).hasSize(1);
      assertThat(json(grade(CaptureReader.read(file), file))).isEqualTo(json(results));
      verdicts.addAll(verdicts(results));
    }

    Capture whole = new Capture(HEADER, lines, 0);
    assertThat(captures).hasSize(tests(kind));
    assertThat(verdicts).isEqualTo(verdicts(grade(whole, whole.format())));
  }

  private static int tests(SimulationKind kind) {
    return switch (kind) {
      case NEVER_BLOCKED -> 0;
      case TWO_TESTS -> 2;
      default -> 1;
    };
  }

  @Test
  void phasesAreToldInOrderAsTheyHappen() {
    List<Phase> phases = new ArrayList<>();
    LiveStream stream =
        new LiveStream(HEADER, new Heard(entered -> phases.add(entered.phase()), c -> {}));
    lines(Simulation.of(SimulationKind.SOUND, 1))
        .forEach(line -> stream.accept(line.hostMicros(), line.text()));
    stream.end();

    assertThat(phases)
        .startsWith(Phase.IDLE, Phase.OPEN, Phase.RISE, Phase.HOLD, Phase.RELEASE)
        .doesNotContain(Phase.DECAY);
  }

  /** A phase told late is of no use to a person who holds a thumb on an inlet. */
  @Test
  void theRiseIsToldWithinTwoSecondsAndTheReleaseWithinOne() {
    Scenario scenario = Simulation.of(SimulationKind.SOUND, 1);
    double blocked = scenario.truth().get(0).occludedAt();
    double released = scenario.truth().get(0).endedAt();
    List<CaptureLine> lines = lines(scenario);
    Map<Phase, Double> told = new java.util.EnumMap<>(Phase.class);
    double[] now = {0};
    LiveStream stream =
        new LiveStream(HEADER, new Heard(entered -> told.put(entered.phase(), now[0]), c -> {}));
    for (CaptureLine line : lines) {
      now[0] = line.hostMicros() / 1e6;
      stream.accept(line.hostMicros(), line.text());
    }

    assertThat(told.get(Phase.RISE)).isBetween(blocked, blocked + 2);
    assertThat(told.get(Phase.RELEASE)).isBetween(released, released + 1);
  }

  @ParameterizedTest
  @MethodSource("idling")
  void hoursOfIdlingAreNoTest(double hertz, double hours, long seed) {
    Scenario scenario =
        Simulation.of(
            SimulationKind.IDLE,
            seed,
            new Conditions(
                OptionalDouble.empty(),
                OptionalDouble.empty(),
                OptionalDouble.of(hertz),
                OptionalDouble.of(3600 * hours)));
    List<Capture> captures = new ArrayList<>();
    List<PhaseEvent.Entered> entered = new ArrayList<>();
    LiveStream stream = new LiveStream(HEADER, new Heard(entered::add, captures::add));
    int[] counts = new int[2];

    scenario
        .lines()
        .forEachRemaining(
            line -> {
              stream.accept(line.hostMicros(), line.line());
              counts[0]++;
              counts[1] = Math.max(counts[1], stream.linesKept());
            });
    stream.end();

    assertThat(captures).isEmpty();
    assertThat(entered.stream().map(PhaseEvent.Entered::phase).collect(Collectors.toSet()))
        .isSubsetOf(Phase.IDLE, Phase.OPEN);
    assertThat(counts[0]).isGreaterThan((int) (3600 * hours * hertz));
    // samples of a minute and a half, and what the sensor says of itself every 2 s beside them
    assertThat(counts[1]).isLessThanOrEqualTo((int) (1.1 * LiveStream.LONGEST_KEPT * (hertz + 1)));
  }

  static Stream<Arguments> idling() {
    return Stream.of(Arguments.of(10, 24, 1), Arguments.of(100, 1, 1), Arguments.of(100, 1, 3));
  }
}
