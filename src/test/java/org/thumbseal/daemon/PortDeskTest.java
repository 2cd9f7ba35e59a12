package org.thumbseal.daemon;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.stream.Stream;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.thumbseal.archive.Archive;
import org.thumbseal.capture.CaptureReader;
import org.thumbseal.grade.Verdict;
import org.thumbseal.json.Canonical;
import org.thumbseal.json.ResultTree;
import org.thumbseal.link.ManualClock;
import org.thumbseal.pipeline.Grader;
import org.thumbseal.pipeline.GradingSettings;
import org.thumbseal.record.ResultDocument;
import org.thumbseal.seal.Sha256;
import org.thumbseal.seal.SigningKey;
import org.thumbseal.simulate.Conditions;
import org.thumbseal.simulate.Simulation;
import org.thumbseal.simulate.SimulationKind;
import org.thumbseal.simulate.TimedLine;
import org.thumbseal.visit.Check;
import org.thumbseal.visit.CheckItem;
import org.thumbseal.visit.CheckState;
import org.thumbseal.visit.StartedBy;
import org.thumbseal.visit.Visit;

/** What people say at a port goes into the file of the test and so into its result. */
class PortDeskTest {
  private static final SigningKey KEY = SigningKey.generate();
  private static final String PORT = "/dev/ttyUSB0";
  private static final Visit SAID =
      new Visit(
          Optional.of("SP-014"),
          List.of(
              new Check(
                  CheckItem.GASKET,
                  CheckState.REPLACED,
                  Optional.of("gasket; 60 mm"),
                  Optional.of("100 % worn"))));
  private static final Visit DAMAGED =
      new Visit(Optional.empty(), List.of(Check.of(CheckItem.CORD, CheckState.NOT_OK)));

  @TempDir private Path folder;
  private final Told diary = new Told();
  private Archive archive;
  private TestRecorder recorder;

  /** Remembers what was told of visits. */
  private static final class Told extends BenchDiary {
    final List<Visit> visits = new ArrayList<>();
    final List<Optional<Started>> starts = new ArrayList<>();

    @Override
    public void visit(String port, Visit visit, Optional<Started> started) {
      visits.add(visit);
      starts.add(started);
    }
  }

  @BeforeEach
  void open() throws Exception {
    archive = Archive.open(folder, KEY);
    ResultStore store = new ResultStore(archive, new ManualClock(), diary);
    store.open().prepare();
    GradingSettings settings = GradingSettings.DEFAULT.withPump(p -> p.withAsset("SP-001"));
    recorder = new TestRecorder(PORT, settings, store, diary);
  }

  @AfterEach
  void close() throws Exception {
    archive.close();
  }

  private static List<TimedLine> lines(SimulationKind kind, double idleSeconds) {
    List<TimedLine> lines = new ArrayList<>();
    Conditions conditions =
        new Conditions(
            OptionalDouble.of(0.5),
            OptionalDouble.empty(),
            OptionalDouble.of(20),
            OptionalDouble.of(idleSeconds));
    Simulation.of(kind, 3, conditions).lines().forEachRemaining(lines::add);
    return lines;
  }

  private void hear(List<TimedLine> lines) {
    lines.forEach(line -> recorder.line(line.hostMicros(), line.line()));
  }

  private void session(SimulationKind kind, Runnable said) {
    List<TimedLine> lines = lines(kind, 95);
    recorder.opened(new ManualClock().wall(), PORT);
    hear(lines.subList(0, 40));
    said.run();
    hear(lines.subList(40, lines.size()));
    recorder.closed(1, "stopped");
  }

  private void start() {
    recorder.visit(SAID);
    assertThat(recorder.start(StartedBy.PAGE, Optional.empty())).isEmpty();
  }

  /** The stored capture without any option, but for the name that the file got afterwards. */
  private static void assertReplays(ResultDocument result, Path document) throws Exception {
    byte[] file = Files.readAllBytes(Path.of(document.toString().replaceFirst("json$", "log")));
    Grader.Source source = Grader.Source.capture(result.evidence().capture(), Sha256.hex(file));
    assertThat(Grader.grade(CaptureReader.read(file), source, GradingSettings.DEFAULT))
        .extracting(r -> Canonical.text(ResultTree.of(r)))
        .containsExactly(Canonical.text(ResultTree.of(result)));
  }

  @Test
  void aTestHasWhatWasSaidAndThenItIsForgotten() throws Exception {
    session(SimulationKind.ALREADY_RUNNING, this::start);

    ResultDocument result = diary.results.get(0);
    assertThat(diary.results).hasSize(1);
    assertThat(result.asset()).contains("SP-014");
    assertThat(result.checks()).hasSize(7).containsAll(SAID.checks());
    assertThat(result.test().start().orElseThrow().by()).isEqualTo(StartedBy.PAGE);
    assertReplays(result, diary.files.get(0));
    assertThat(diary.visits.get(0).asset()).contains("SP-001");
    assertThat(diary.visits).contains(SAID);
    assertThat(diary.visits.get(diary.visits.size() - 1))
        .isEqualTo(new Visit(Optional.of("SP-001"), List.of()));
  }

  @Test
  void aTestThatCouldNotBeJudgedLeavesTheVisit() throws Exception {
    session(SimulationKind.IDLE, this::start);

    ResultDocument result = diary.results.get(0);
    assertThat(diary.results).hasSize(1);
    assertThat(result.grade().verdict()).isEqualTo(Verdict.INVALID);
    assertThat(diary.files.get(0).getFileName().toString()).contains("_SP-014_invalid_");
    assertReplays(result, diary.files.get(0));
    assertThat(diary.visits.get(diary.visits.size() - 1)).isEqualTo(SAID);
    assertThat(diary.starts.get(diary.starts.size() - 1)).isEmpty();
    assertThat(diary.starts)
        .anySatisfy(told -> assertThat(told).contains(new Started(StartedBy.PAGE, 90)));
  }

  /** At any moment the open capture is what would be graded, and a kill takes nothing of it. */
  @Test
  void theOpenCaptureHasWhatWasSaidAtOnce() throws Exception {
    recorder.opened(new ManualClock().wall(), PORT);
    hear(lines(SimulationKind.IDLE, 3));
    start();

    try (Stream<Path> open = Files.list(folder.resolve("open"))) {
      var header = CaptureReader.read(Files.readAllBytes(open.toList().get(0))).header();
      assertThat(header.fact("asset")).contains("SP-014");
      assertThat(header.fact("check-gasket"))
          .contains("replaced; part: gasket%3B 60 mm; reason: 100 %25 worn");
      assertThat(header.fact("start").orElseThrow()).matches("[23]\\.[0-9]{6} page");
    }
  }

  @Test
  void aStartIsRefusedWhereItCannotBe() {
    assertThat(recorder.start(StartedBy.COMMAND, Optional.empty()))
        .contains(StartRefusal.NOT_CONNECTED);
    recorder.opened(new ManualClock().wall(), PORT);
    assertThat(recorder.start(StartedBy.COMMAND, Optional.empty()))
        .contains(StartRefusal.NOT_CONNECTED);

    for (TimedLine line : lines(SimulationKind.ALREADY_RUNNING, 1)) {
      recorder.line(line.hostMicros(), line.line());
      if (diary.isTesting()) {
        break;
      }
    }
    assertThat(recorder.start(StartedBy.COMMAND, Optional.empty()))
        .contains(StartRefusal.TEST_RUNNING);
    recorder.visit(DAMAGED);
    // The page that names a pump may not know yet what another has just said of its cord.
    assertThat(recorder.start(StartedBy.COMMAND, Optional.of("SP-015")))
        .contains(StartRefusal.MAINS_FORBIDDEN);
  }
}
