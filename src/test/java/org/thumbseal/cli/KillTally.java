package org.thumbseal.cli;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.stream.Stream;

/** What the kills of all lanes met. */
final class KillTally {
  private final List<Double> missing = new ArrayList<>();
  private int underWay;

  /** A process was killed; its result directory is as it left it. */
  synchronized void kill(Path results, double missingSeconds) throws IOException {
    missing.add(missingSeconds);
    try (Stream<Path> files = Files.walk(results)) {
      boolean temporary = files.anyMatch(f -> f.toString().matches(".*\\.(tmp|new)"));
      if (temporary || Files.size(results.resolve(".lock")) > 0) {
        underWay++;
      }
    }
  }

  /** After a restart there were so many documents; so many had to be there, or had been told. */
  synchronized void seen(int documents, int due, int told) {
    System.out.printf(
        Locale.ROOT,
        "kills %d: here %d documents, %d due, %d told%n",
        kills(),
        documents,
        due,
        told);
  }

  synchronized int kills() {
    return missing.size();
  }

  /** Kills in the middle of a write. */
  synchronized int underWay() {
    return underWay;
  }

  /** Seconds before a kill of which nothing was in the open capture, at worst. */
  synchronized double worstMissing() {
    return missing.stream().mapToDouble(s -> s).max().orElse(0);
  }

  @Override
  public synchronized String toString() {
    return String.format(
        Locale.ROOT,
        "%d kills, %d of them in the middle of a write; missing of an open capture: median %.2f s,"
            + " at worst %.2f s",
        kills(),
        underWay,
        missing.stream().sorted().skip(kills() / 2).findFirst().orElse(0.0),
        worstMissing());
  }
}
