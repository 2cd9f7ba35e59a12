package org.thumbseal.daemon;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
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
import org.thumbseal.json.Canonical;
import org.thumbseal.json.ResultTree;
import org.thumbseal.link.ManualClock;
import org.thumbseal.phase.Phase;
import org.thumbseal.pipeline.Grader;
import org.thumbseal.pipeline.GradingSettings;
import org.thumbseal.record.ResultDocument;
import org.thumbseal.register.KeptRegister;
import org.thumbseal.seal.Sha256;
import org.thumbseal.seal.SigningKey;
import org.thumbseal.simulate.Conditions;
import org.thumbseal.simulate.Simulation;
import org.thumbseal.simulate.SimulationKind;
import org.thumbseal.simulate.TimedLine;
import org.thumbseal.visit.Visit;

/** What a register says of a pump decides its next test, and no test that was graded before. */
class RegisteredTestsTest {
  private static final String PORT = "/dev/ttyUSB0";

  @TempDir private Path folder;
  private final BenchDiary diary = new BenchDiary();
  private Path register;
  private KeptRegister kept;
  private Archive archive;
  private TestRecorder recorder;

  @BeforeEach
  void open() throws Exception {
    Files.writeString(
        folder.resolve("ward.json"), "{\"name\": \"ward\", \"riseTimeLimit\": \"12 s\"}");
    register = folder.resolve("pumps.csv");
    write("SP-001,2,30,\nSP-002,3,,ward.json\n");
    kept = new KeptRegister(register, () -> LocalDate.of(2026, 3, 2), Optional.empty());
    archive = Archive.open(folder.resolve("results"), SigningKey.generate());
    ResultStore store = new ResultStore(archive, new ManualClock(), diary);
    store.open().prepare();
    recorder =
        new TestRecorder(
            PORT,
            GradingSettings.DEFAULT.withPump(p -> p.withAsset("SP-001")).withPumps(kept.pumps()),
            store,
            diary);
  }

  @AfterEach
  void close() throws Exception {
    archive.close();
  }

  private void write(String rows) {
    try {
      Files.writeString(register, "id,jar_l,rated_l_min,criteria\n" + rows);
    } catch (java.io.IOException e) {
      throw new java.io.UncheckedIOException(e);
    }
  }

  private static List<TimedLine> lines() {
    List<TimedLine> lines = new ArrayList<>();
    Conditions conditions =
        new Conditions(
            OptionalDouble.of(0.5),
            OptionalDouble.empty(),
            OptionalDouble.of(20),
            OptionalDouble.empty());
    Simulation.of(SimulationKind.SOUND, 3, conditions).lines().forEachRemaining(lines::add);
    return lines;
  }

  /** One test; {@code during} comes when this phase has begun. */
  private ResultDocument test(Phase phase, Runnable during) {
    diary.phases.clear();
    recorder.opened(new ManualClock().wall().plusSeconds(diary.results.size()), PORT);
    boolean done = false;
    for (TimedLine line : lines()) {
      recorder.line(line.hostMicros(), line.line());
      if (!done && diary.phases.contains(phase)) {
        during.run();
        done = true;
      }
    }
    recorder.closed(1, "stopped");
    assertThat(done).isTrue();
    return diary.results.get(diary.results.size() - 1);
  }

  private ResultDocument test() {
    return test(Phase.IDLE, () -> {});
  }

  private static void assertReplays(ResultDocument result, Path document, GradingSettings settings)
      throws Exception {
    byte[] file = Files.readAllBytes(Path.of(document.toString().replaceFirst("json$", "log")));
    Grader.Source source = Grader.Source.capture(result.evidence().capture(), Sha256.hex(file));
    assertThat(Grader.grade(CaptureReader.read(file), source, settings))
        .extracting(r -> Canonical.text(ResultTree.of(r)))
        .containsExactly(Canonical.text(ResultTree.of(result)));
  }

  private static Optional<Double> rated(ResultDocument result) {
    return result.grade().criteria().equipment().ratedLitresPerMinute();
  }

  @Test
  void jarAndRatedFlowStandInTheRecordSoThatAReplayNeedsNoRegister() throws Exception {
    ResultDocument result = test();

    assertThat(result.test().jarLitres()).contains(2.0);
    assertThat(rated(result)).contains(30.0);
    assertReplays(result, diary.files.get(0), GradingSettings.DEFAULT);
    // A register that says something else by now changes nothing that the record says.
    write("SP-001,9,90,\n");
    GradingSettings later = GradingSettings.DEFAULT.withPumps(kept.pumps().now(text -> {}));
    assertReplays(result, diary.files.get(0), later);
  }

  @Test
  void thePumpNamedAtTheBenchHasItsOwnJarAndLimits() throws Exception {
    ResultDocument result =
        test(Phase.IDLE, () -> recorder.visit(new Visit(Optional.of("SP-002"), List.of())));

    assertThat(result.asset()).contains("SP-002");
    assertThat(result.test().jarLitres()).contains(3.0);
    assertThat(result.grade().criteria().name()).isEqualTo("ward");
    assertThat(result.grade().criteria().riseSeconds()).isEqualTo(12);
    assertThat(rated(result)).isEmpty();
    assertReplays(result, diary.files.get(0), GradingSettings.DEFAULT.withPumps(kept.pumps()));
  }

  @Test
  void aPumpThatIsNotInItIsTestedAndSaidOnce() {
    Runnable named = () -> recorder.visit(new Visit(Optional.of("SP-100"), List.of()));

    ResultDocument first = test(Phase.IDLE, named);
    test(Phase.IDLE, named);

    assertThat(first.asset()).contains("SP-100");
    assertThat(first.test().jarLitres()).isEmpty();
    assertThat(diary.results).hasSize(2);
    assertThat(diary.notices)
        .filteredOn(text -> text.contains("register"))
        .containsExactly(PORT + ": SP-100 is not in the register; it is tested all the same");
  }

  @Test
  void aChangeIsTakenUpBetweenTestsAndNeverWithinOne() throws Exception {
    ResultDocument within = test(Phase.RISE, () -> write("SP-001,4,40,\n"));
    ResultDocument next = test();
    ResultDocument atThePump = test(Phase.IDLE, () -> write("SP-001,5,50,\n"));

    assertThat(Stream.of(within, next, atThePump).map(r -> r.test().jarLitres().orElseThrow()))
        .containsExactly(2.0, 4.0, 5.0);
    assertThat(Stream.of(within, next, atThePump).map(r -> rated(r).orElseThrow()))
        .containsExactly(30.0, 40.0, 50.0);
    assertReplays(within, diary.files.get(0), GradingSettings.DEFAULT);
    assertReplays(atThePump, diary.files.get(2), GradingSettings.DEFAULT);
  }

  @Test
  void aBrokenOneIsToldOnceAndTheOneBeforeKept() {
    write("SP-001,two,30,\nSP-001,2,x,\n");

    List<ResultDocument> results = List.of(test(), test());

    assertThat(results).allMatch(r -> r.test().jarLitres().equals(Optional.of(2.0)));
    assertThat(diary.notices)
        .filteredOn(text -> text.contains("register"))
        .singleElement()
        .asString()
        .contains("row 2, jar_l: 'two' is not a number; and 2 more", "before is used on");
  }
}
