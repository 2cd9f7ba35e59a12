package org.thumbseal.daemon;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Iterator;
import java.util.List;
import java.util.SplittableRandom;
import java.util.stream.Stream;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import org.thumbseal.archive.Archive;
import org.thumbseal.archive.Outcome;
import org.thumbseal.archive.Verification;
import org.thumbseal.capture.Capture;
import org.thumbseal.capture.CaptureReader;
import org.thumbseal.grade.Verdict;
import org.thumbseal.link.ManualClock;
import org.thumbseal.pipeline.GradingSettings;
import org.thumbseal.record.ResultDocument;
import org.thumbseal.seal.SealAnswer;
import org.thumbseal.seal.SigningKey;
import org.thumbseal.seal.TrustStore;
import org.thumbseal.simulate.Simulation;
import org.thumbseal.simulate.SimulationKind;
import org.thumbseal.simulate.TimedLine;

/**
 * Whatever a process that is killed leaves in the result directory, the next one makes the same of
 * it as the first would have. The directory is copied at moments of all kinds: what is in it then
 * is what a kill would leave, for what was given to the operating system outlives the process.
 */
class KillTest {
  private static final SigningKey KEY = SigningKey.generate();
  private static final long SEED = 20260302;
  private static final int KILLS = 3;
  private static final String PORT = "/dev/ttyUSB0";

  @TempDir private Path folder;

  /** At a moment just after a result was stored, before anything else is done. */
  private final class Snapshots extends BenchDiary {
    private final Path directory;
    final List<Path> copies = new ArrayList<>();

    Snapshots(Path directory) {
      this.directory = directory;
    }

    @Override
    public synchronized void result(String port, ResultDocument result, Path file) {
      super.result(port, result, file);
      assertSameBytes(file);
      copies.add(copy(directory, "stored" + copies.size()));
    }

    private void assertSameBytes(Path document) {
      try (Stream<Path> open = Files.list(directory.resolve("open"))) {
        Path stored = Path.of(document.toString().replaceFirst("json$", "log"));
        assertThat(open.toList())
            .singleElement()
            .satisfies(file -> assertThat(file).hasSameBinaryContentAs(stored));
      } catch (IOException e) {
        throw new AssertionError(e);
      }
    }
  }

  @ParameterizedTest
  @EnumSource(value = SimulationKind.class, names = "IDLE", mode = EnumSource.Mode.EXCLUDE)
  void theNextStartMakesTheSameOfIt(SimulationKind kind) throws Exception {
    Path results = folder.resolve("results");
    Snapshots diary = new Snapshots(results);
    int lines = (int) count(Simulation.of(kind, 1).lines());
    List<Integer> kills =
        new SplittableRandom(SEED + kind.name().hashCode())
            .ints(KILLS, 1, lines)
            .sorted()
            .boxed()
            .toList();
    try (Archive archive = Archive.open(results, KEY)) {
      ResultStore store = new ResultStore(archive, new ManualClock(), diary);
      store.open().prepare();
      TestRecorder recorder = new TestRecorder(PORT, GradingSettings.DEFAULT, store, diary);
      recorder.opened(new ManualClock().wall(), PORT);
      Iterator<TimedLine> sent = Simulation.of(kind, 1).lines();
      for (int i = 1; sent.hasNext(); i++) {
        TimedLine line = sent.next();
        recorder.line(line.hostMicros(), line.line());
        if (kills.contains(i)) {
          assertRecovered(copy(results, "kill" + i), diary, line.hostMicros(), kind + " " + i);
        }
      }
      recorder.closed(1, "stopped");
      assertThat(store.finish()).isTrue();
    }
    assertThat(results.resolve("open")).doesNotExist();
    for (Path copy : diary.copies) {
      assertThat(recovered(copy, diary.ids().subList(0, diary.copies.indexOf(copy) + 1))).isEmpty();
    }
  }

  private static long count(Iterator<?> lines) {
    return Stream.iterate(lines, Iterator::hasNext, i -> i).peek(Iterator::next).count();
  }

  private void assertRecovered(Path copy, BenchDiary diary, long hostMicros, String when)
      throws Exception {
    assertReachesBack(copy, hostMicros, when);
    List<ResultDocument> more = recovered(copy, diary.ids());
    assertThat(more.size()).as(when).isBetween(diary.isTesting() ? 1 : 0, 1);
    // What was told no rise, or had been told its result, is no ground for a verdict.
    assertThat(more)
        .as(when)
        .allMatch(result -> diary.isTesting() || result.grade().verdict() == Verdict.INVALID);
  }

  /** A quarter of a second and one line may be in the process still. */
  private static void assertReachesBack(Path copy, long hostMicros, String when) throws Exception {
    try (Stream<Path> open = Files.list(copy.resolve("open"))) {
      Capture capture = CaptureReader.read(Files.readAllBytes(open.toList().get(0)));
      long last = capture.lines().get(capture.lines().size() - 1).hostMicros();
      assertThat(hostMicros - last).as(when).isBetween(0L, 260_000L);
    }
  }

  /** Starts twice on what is left; gives the results that were not there before. */
  private static List<ResultDocument> recovered(Path copy, List<String> ids) throws Exception {
    BenchDiary first = start(copy);
    List<ResultDocument> more =
        first.results.stream().filter(result -> !ids.contains(result.id())).toList();
    assertThat(said(first)).as(copy.toString()).hasSize(1);
    BenchDiary second = start(copy);
    assertThat(second.results).isEmpty();
    assertThat(said(second)).isEmpty();
    assertThat(trusted(copy)).hasSize(ids.size() + more.size()).containsAll(ids);
    return more;
  }

  /** What was said of the capture that was left; the line about health apart. */
  private static List<String> said(BenchDiary diary) {
    return diary.notices.stream().filter(notice -> !notice.startsWith("health: ")).toList();
  }

  private static BenchDiary start(Path results) throws Exception {
    BenchDiary diary = new BenchDiary();
    try (Archive archive = Archive.open(results, KEY)) {
      ResultStore store = new ResultStore(archive, new ManualClock(), diary);
      new InterruptedCaptures(store, GradingSettings.DEFAULT, diary).takeUp();
      assertThat(store.finish()).isTrue();
    }
    assertThat(results.resolve("open")).doesNotExist();
    return diary;
  }

  /** The ids in a directory that verifies. */
  private static List<String> trusted(Path results) throws Exception {
    List<String> ids = new ArrayList<>();
    if (!Files.exists(results.resolve("head.json"))) {
      return ids;
    }
    List<Outcome> outcomes = new ArrayList<>();
    new Verification(TrustStore.of(KEY.verifyingKey())).directory(results, outcomes::add);
    for (Outcome outcome : outcomes) {
      assertThat(outcome).isInstanceOf(Outcome.Answered.class);
      assertThat(((Outcome.Answered) outcome).answer()).isEqualTo(SealAnswer.TRUSTED_KEY);
      String text = Files.readString(((Outcome.Answered) outcome).file());
      ids.add(text.replaceFirst("(?s).*\"id\":\"([0-9a-f-]{36})\".*", "$1"));
    }
    return ids;
  }

  private Path copy(Path results, String name) {
    Path target = folder.resolve(name);
    try (Stream<Path> all = Files.walk(results)) {
      for (Path file : all.filter(f -> !f.endsWith(".lock")).toList()) {
        Path to = target.resolve(results.relativize(file).toString());
        Files.createDirectories(to.getParent());
        Files.copy(file, to);
      }
    } catch (IOException e) {
      throw new AssertionError(e);
    }
    return target;
  }
}
