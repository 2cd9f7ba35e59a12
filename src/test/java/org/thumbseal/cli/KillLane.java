package org.thumbseal.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
import java.util.OptionalLong;
import java.util.Set;
import java.util.SplittableRandom;
import java.util.stream.Stream;
import org.awaitility.Awaitility;
import org.thumbseal.capture.CaptureLine;
import org.thumbseal.capture.CaptureReader;
import org.thumbseal.link.HostClock;
import org.thumbseal.simulate.TestTruth;

/**
 * One watch that is killed again and again, and what is to be true after each restart. Every other
 * kill is aimed at the 300 ms about the moment of a verdict, where most can go wrong.
 */
final class KillLane implements AutoCloseable {
  /** Before a test is blocked, a program must have listened for so long to see it whole, s. */
  private static final double TO_SEE_IT_WHOLE = 2;

  /** A test that ended so long before the kill must be there, s. */
  private static final double SURELY_ENDED = 1;

  /** How near the blocking in a document must be to the truth to be that test, s. */
  private static final double SAME_TEST = 0.7;

  private static final double AIM = 0.3;
  private static final double FIRST_GUESS = 0.6;

  private final Path folder;
  private final KillFeed feed;
  private final SplittableRandom random;
  private final KillTally tally;
  private final Set<TestTruth> due = new LinkedHashSet<>();
  private final List<Path> printed = new ArrayList<>();
  private double verdictDelay = FIRST_GUESS;
  private Optional<WatchLife> started = Optional.empty();
  private double listening;

  KillLane(Path folder, boolean pty, long seed, KillTally tally) throws IOException {
    this.folder = Files.createDirectories(folder);
    this.feed = KillFeed.start(folder, pty);
    this.random = new SplittableRandom(seed);
    this.tally = tally;
  }

  /** So many kills, and a stop in order at the end. */
  void run(int kills) throws Exception {
    begin();
    for (int i = 0; i < kills; i++) {
      awaitKill(i % 2 == 0);
      endAt(life().kill());
      feed.unplug();
      begin();
      assertAllThere();
    }
    endAt(System.nanoTime());
    assertThat(life().stop()).as(life().err()).isZero();
    assertThat(results().resolve("open")).doesNotExist();
    assertAllThere();
  }

  private Path results() {
    return folder.resolve("results");
  }

  private Path key() {
    return folder.resolve("keys/k.pem");
  }

  private void begin() throws Exception {
    String port = feed.plugIn();
    WatchLife life =
        WatchLife.start(
            folder, "watch", "--port", port, "--results", results(), "--key", key(), "--wait");
    started = Optional.of(life);
    if (feed.isPty()) {
      Path device = Path.of(port).toRealPath();
      Awaitility.await()
          .atMost(Duration.ofSeconds(90))
          .until(() -> ProgramProcess.holds(life.process(), device));
      feed.opened();
    }
    life.awaitErr("a sensor is speaking");
    listening = feed.now();
  }

  private WatchLife life() {
    return started.orElseThrow();
  }

  private void awaitKill(boolean aimed) {
    double more = 1 + 17 * random.nextDouble();
    if (aimed) {
      TestTruth next = first(feed.now() + TO_SEE_IT_WHOLE);
      Awaitility.await()
          .atMost(Duration.ofSeconds(90))
          .pollInterval(Duration.ofMillis(10))
          .until(() -> feed.now() >= next.endedAt());
      more = Math.max(0, verdictDelay + AIM * (random.nextDouble() - 0.5));
    }
    HostClock.system().pause(Duration.ofNanos((long) (1e9 * more)));
  }

  private TestTruth first(double after) {
    return feed.truth().stream().filter(t -> t.occludedAt() > after).findFirst().orElseThrow();
  }

  private void endAt(long nanos) throws Exception {
    for (TestTruth test : feed.truth()) {
      OptionalLong ended = feed.sentAt(test.endedAt());
      boolean whole = test.occludedAt() > listening + TO_SEE_IT_WHOLE;
      if (whole && ended.isPresent() && (nanos - ended.getAsLong()) / 1e9 > SURELY_ENDED) {
        due.add(test);
      }
    }
    life().out().forEach(this::learn);
    if (!life().process().isAlive()) {
      tally.kill(results(), missing(nanos));
    }
  }

  private void learn(WatchLife.Said said) {
    if (said.line().strip().endsWith(".json")) {
      printed.add(Path.of(said.line().strip()));
      feed.truth().stream()
          .flatMapToLong(test -> feed.sentAt(test.endedAt()).stream())
          .mapToDouble(ended -> (said.nanos() - ended) / 1e9)
          .filter(delay -> delay > 0 && delay < 3)
          .min()
          .ifPresent(delay -> verdictDelay += 0.5 * (delay - verdictDelay));
    }
  }

  /** Of how many seconds before the kill nothing is in the open capture. */
  private double missing(long killed) throws Exception {
    try (Stream<Path> all = Files.list(results().resolve("open"))) {
      List<Path> open = all.filter(file -> file.toString().endsWith(".log")).toList();
      assertThat(open).hasSize(1);
      List<String> lines =
          CaptureReader.read(Files.readAllBytes(open.get(0))).lines().stream()
              .map(CaptureLine::text)
              .filter(line -> line.startsWith("S,"))
              .toList();
      return feed.missing(lines.get(lines.size() - 1), killed);
    }
  }

  private void assertAllThere() throws Exception {
    assertThat(printed).as("told before a kill").allSatisfy(file -> assertThat(file).exists());
    // The new process may be writing one of its own at the moment.
    Awaitility.await().atMost(Duration.ofSeconds(10)).until(() -> temporary().isEmpty());
    CommandRun verify = CommandRun.of("verify", "--key", key(), results());
    assertThat(verify.code()).as(verify.out() + verify.err()).isZero();
    List<Double> blocked = new ArrayList<>();
    for (Path document : new ResultFiles(results()).documents()) {
      blocked.add(blockedAt(document));
    }
    for (TestTruth test : due) {
      assertThat(blocked.stream().filter(b -> Math.abs(b - test.occludedAt()) < SAME_TEST))
          .as("the test blocked at " + test.occludedAt() + " s, of " + blocked)
          .hasSize(1);
    }
    tally.seen(blocked.size(), due.size(), printed.size());
  }

  private List<Path> temporary() throws IOException {
    List<Path> all = new ArrayList<>(new ResultFiles(results()).files(".tmp"));
    all.addAll(new ResultFiles(results()).files(".new"));
    return all;
  }

  /** On the clock of the sensor, which counts hundredths of a second. */
  private static double blockedAt(Path document) throws Exception {
    String first =
        CaptureReader.read(Files.readAllBytes(ResultFiles.capture(document))).lines().stream()
            .map(CaptureLine::text)
            .filter(line -> line.startsWith("S,"))
            .findFirst()
            .orElseThrow();
    return Integer.parseInt(first.split(",", -1)[1]) / 100.0
        + ResultFiles.read(document).path("test").path("occludedAt").doubleValue();
  }

  @Override
  public void close() throws IOException {
    started.ifPresent(life -> life.process().destroyForcibly());
    feed.close();
  }
}
