package org.thumbseal.cli;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;

/**
 * Kills watches at random moments and looks at what the next start makes of it. All feeds run in
 * real time; every fourth lane is over a pseudo-terminal, the others over TCP.
 *
 * <pre>mvn -q test-compile exec:java -Dexec.classpathScope=test \
 *     -DmainClass=org.thumbseal.cli.KillStudy -Dexec.args="200 8 1"</pre>
 */
public final class KillStudy {
  private static final int PTY_LANES = 4;

  private KillStudy() {}

  /** Takes the number of kills, of lanes, and a seed. */
  public static void main(String[] args) throws Exception {
    Path folder = Files.createTempDirectory("kill-study");
    int lanes = Integer.parseInt(args[1]);
    System.out.println(
        run(folder, Integer.parseInt(args[0]) / lanes, lanes, Long.parseLong(args[2])));
  }

  static KillTally run(Path folder, int kills, int lanes, long seed) throws Exception {
    KillTally tally = new KillTally();
    ExecutorService threads = Executors.newFixedThreadPool(lanes);
    try {
      List<Future<?>> running = new ArrayList<>();
      for (int i = 0; i < lanes; i++) {
        int lane = i;
        running.add(
            threads.submit(
                () -> {
                  runLane(
                      new KillLane(
                          folder.resolve("lane" + lane),
                          lane % PTY_LANES == 0,
                          seed * 1000 + lane,
                          tally),
                      kills);
                  return null;
                }));
      }
      for (Future<?> each : running) {
        each.get();
      }
    } finally {
      threads.shutdownNow();
    }
    return tally;
  }

  private static void runLane(KillLane lane, int kills) throws Exception {
    try (lane) {
      lane.run(kills);
    }
  }
}
