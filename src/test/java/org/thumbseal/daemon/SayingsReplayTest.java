package org.thumbseal.daemon;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.SplittableRandom;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.thumbseal.archive.Archive;
import org.thumbseal.capture.CaptureReader;
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
import org.thumbseal.wire.Crc16;

/**
 * Whatever people say, and whenever: the stored capture, read again without any option, gives the
 * stored document byte for byte, and what was told as a test is one on the second look.
 */
class SayingsReplayTest {
  private static final int SEQUENCES = 15;
  private static final int SAYINGS = 12;
  private static final double RATE = 10;
  private static final SigningKey KEY = SigningKey.generate();
  private static final List<SimulationKind> KINDS =
      List.of(
          SimulationKind.SOUND,
          SimulationKind.SLIPPED,
          SimulationKind.ALREADY_RUNNING,
          SimulationKind.TWO_TESTS,
          SimulationKind.NEVER_BLOCKED,
          SimulationKind.RESTART,
          SimulationKind.NOISY_LINE,
          SimulationKind.IDLE);
  private static final List<String> WORDS =
      List.of(
          "gasket; 60 mm",
          "100 % worn",
          "%3B",
          "a\n# asset X",
          "\u0085# start 1 page\u2028x",
          "reason: part: ",
          " \t ",
          "\u202Eabc",
          "# thumbseal capture 1",
          "\uD83E\uDE79");

  @TempDir private Path folder;

  /** Four parts, so that none holds the others up: 60 sequences in all. */
  @ParameterizedTest
  @ValueSource(longs = {1, 2, 3, 4})
  void theStoredCaptureGivesTheStoredDocument(long part) throws Exception {
    int results = 0;
    for (int i = 0; i < SEQUENCES; i++) {
      long seed = part * 1_000 + i;
      results += new Sequence(seed, folder.resolve("s" + seed)).run();
    }
    assertThat(results).isGreaterThan(SEQUENCES / 2);
  }

  /** One bench, one kind of test, one person who does not stand still. */
  private static final class Sequence {
    private final BenchDiary diary = new BenchDiary();
    private final String name;
    private final SplittableRandom random;
    private final Path results;

    Sequence(long seed, Path results) throws Exception {
      this.name = "seed " + seed;
      this.random = new SplittableRandom(seed);
      this.results = results;
    }

    int run() throws Exception {
      List<TimedLine> lines = lines();
      try (Archive archive = Archive.open(results, KEY)) {
        ResultStore store = new ResultStore(archive, new ManualClock(), diary);
        store.open().prepare();
        TestRecorder recorder = new TestRecorder("sim:x", GradingSettings.DEFAULT, store, diary);
        recorder.opened(new ManualClock().wall(), "sim:x");
        double often = (double) SAYINGS / lines.size();
        for (TimedLine line : lines) {
          recorder.line(line.hostMicros(), line.line());
          if (random.nextDouble() < often) {
            say(recorder, line.hostMicros());
          }
        }
        recorder.closed(1, "stopped");
      }
      for (int i = 0; i < diary.results.size(); i++) {
        assertReplays(diary.results.get(i), diary.files.get(i));
      }
      assertThat(diary.notices).as(name).noneMatch(n -> n.contains("second look"));
      return diary.results.size();
    }

    private List<TimedLine> lines() {
      Conditions conditions =
          new Conditions(
              OptionalDouble.of(0.5),
              OptionalDouble.empty(),
              OptionalDouble.of(RATE),
              OptionalDouble.of(150));
      List<TimedLine> lines = new ArrayList<>();
      SimulationKind kind = KINDS.get(random.nextInt(KINDS.size()));
      Simulation.of(kind, random.nextInt(1_000), conditions).lines().forEachRemaining(lines::add);
      return lines;
    }

    private void say(TestRecorder recorder, long now) {
      switch (random.nextInt(7)) {
        case 0 -> recorder.line(now, Crc16.seal("K,1,1"));
        case 1 -> recorder.line(now, Crc16.seal("K,1,0"));
        case 2 -> recorder.visit(visit());
        case 3 -> recorder.seek(Optional.of("SP-" + random.nextInt(9)));
        case 4 -> recorder.seek(Optional.empty());
        case 5 -> recorder.start(StartedBy.COMMAND, Optional.of("SP-" + random.nextInt(9)));
        default -> recorder.start(StartedBy.PAGE, Optional.empty());
      }
    }

    private Visit visit() {
      List<Check> checks = new ArrayList<>();
      for (CheckItem item : CheckItem.values()) {
        if (random.nextInt(3) == 0) {
          CheckState[] states = CheckState.values();
          checks.add(new Check(item, states[random.nextInt(states.length)], words(), words()));
        }
      }
      return new Visit(
          random.nextInt(3) == 0 ? Optional.empty() : Optional.of("(01)x % ; #" + name), checks);
    }

    private Optional<String> words() {
      return random.nextInt(3) == 0
          ? Optional.empty()
          : Optional.of(WORDS.get(random.nextInt(WORDS.size())));
    }

    private void assertReplays(ResultDocument result, Path document) throws Exception {
      byte[] file = Files.readAllBytes(Path.of(document.toString().replaceFirst("json$", "log")));
      Grader.Source source = Grader.Source.capture(result.evidence().capture(), Sha256.hex(file));
      assertThat(Grader.grade(CaptureReader.read(file), source, GradingSettings.DEFAULT))
          .as(name)
          .extracting(r -> Canonical.text(ResultTree.of(r)))
          .containsExactly(Canonical.text(ResultTree.of(result)));
    }
  }
}
