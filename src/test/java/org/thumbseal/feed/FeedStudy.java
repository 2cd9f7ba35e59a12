package org.thumbseal.feed;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.SplittableRandom;
import org.thumbseal.cli.Main;
import org.thumbseal.link.HostClock;
import org.thumbseal.seal.TlsTrust;

/**
 * Kills a sending program again and again while it sends to a real broker, and counts what arrives
 * with a subscriber by other hands. Every fourth time the broker is stopped for a moment as well.
 *
 * <pre>java -cp target/test-classes:target/classes:$(cat target/classpath) \
 *     org.thumbseal.feed.FeedStudy 100 1</pre>
 */
public final class FeedStudy {
  private static final int DOCUMENTS_A_KILL = 6;
  private static final int BETWEEN_STOPS = 4;

  /** The longest that a kill comes after the first document of a life has arrived, bytes. */
  private static final int MOST_BYTES = 40_000;

  /** What starts a small Java quickly. */
  private static final List<String> QUICK =
      List.of("-XX:TieredStopAtLevel=1", "-XX:+UseSerialGC", "-Xmx128m");

  private final Path folder;
  private final SentDocuments from;
  private final Broker broker;
  private final Collector collector;
  private final SplittableRandom random;
  private int midway;

  private FeedStudy(
      Path folder, SentDocuments from, Broker broker, Collector collector, long seed) {
    this.folder = folder;
    this.from = from;
    this.broker = broker;
    this.collector = collector;
    this.random = new SplittableRandom(seed);
  }

  /**
   * What came of it.
   *
   * @param kills of the sending program
   * @param midway of them while documents were waiting
   * @param documents that there were
   * @param missing that never arrived
   * @param arrivals of all, twice and more times ones counted each time
   * @param inOrder whether the first arrivals are in the order of the chain
   */
  record Tally(
      int kills, int midway, int documents, long missing, long arrivals, boolean inOrder) {}

  /** Takes the number of kills and a seed. */
  @SuppressWarnings("SystemOut") // What the study is for.
  public static void main(String... args) throws Exception {
    Path folder = Files.createTempDirectory("feed-study");
    System.out.println(run(folder, Integer.parseInt(args[0]), Long.parseLong(args[1])));
  }

  static Tally run(Path folder, int kills, long seed) throws Exception {
    int documents = kills * DOCUMENTS_A_KILL;
    SentDocuments from = SentDocuments.in(folder.resolve("results"), documents);
    try (Broker broker = Broker.in(folder.resolve("broker"), "allow_anonymous true");
        Collector collector = Collector.at(broker, folder.resolve("collector"))) {
      FeedStudy study = new FeedStudy(folder, from, broker, collector, seed);
      for (int kill = 1; kill <= kills; kill++) {
        study.live(kill % BETWEEN_STOPS == 0);
      }
      study.finish();
      collector.await(documents);
      List<String> first = collector.firstIds();
      List<String> all = SentDocuments.ids(documents);
      return new Tally(
          kills,
          study.midway,
          documents,
          all.stream().filter(id -> !first.contains(id)).count(),
          collector.ids().size(),
          first.equals(all));
    }
  }

  private String address() {
    return "mqtt://127.0.0.1:" + broker.port();
  }

  /** Starts the program, and kills it a little after its first document has arrived. */
  private void live(boolean stopping) throws Exception {
    long before = collector.bytes();
    Process process = start();
    await(before + 1, Duration.ofSeconds(waiting() > 0 ? 30 : 1));
    if (stopping) {
      broker.stop();
    }
    await(before + 1 + random.nextInt(MOST_BYTES), Duration.ofMillis(300));
    process.destroyForcibly().waitFor();
    if (stopping) {
      broker.start();
    }
    midway += waiting() > 0 ? 1 : 0;
  }

  private Process start() throws IOException {
    List<String> command =
        new ArrayList<>(
            List.of(Path.of(System.getProperty("java.home"), "bin", "java").toString()));
    command.addAll(QUICK);
    command.addAll(
        List.of("-cp", System.getProperty("java.class.path"), Main.class.getName(), "feed"));
    command.addAll(List.of(address(), "--results", from.path().toString()));
    return new ProcessBuilder(command)
        .redirectErrorStream(true)
        .redirectOutput(ProcessBuilder.Redirect.appendTo(folder.resolve("feed.log").toFile()))
        .start();
  }

  /** Until so much has arrived in all, or for so long: where the broker is away nothing comes. */
  private void await(long bytes, Duration longest) throws IOException {
    HostClock clock = HostClock.system();
    long begun = clock.nanos();
    while (collector.bytes() < bytes && clock.nanos() - begun < longest.toNanos()) {
      clock.pause(Duration.ofMillis(1));
    }
  }

  private long waiting() throws Exception {
    var to =
        new FeedTarget(
            FeedAddress.parse(address()),
            FeedTarget.STANDARD_TOPIC,
            Optional.empty(),
            TlsTrust.of(Optional.empty()),
            true);
    return Feeder.state(from.place(), to).waiting();
  }

  private void finish() throws Exception {
    Process process = start();
    HostClock clock = HostClock.system();
    long begun = clock.nanos();
    while (waiting() > 0 && clock.nanos() - begun < Duration.ofSeconds(60).toNanos()) {
      clock.pause(Duration.ofMillis(50));
    }
    process.destroy();
    process.waitFor();
  }
}
