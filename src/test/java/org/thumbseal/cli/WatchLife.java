package org.thumbseal.cli;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.TimeUnit;
import org.awaitility.Awaitility;

/** One run of {@code watch} as a process, from its start to its end by a signal. */
final class WatchLife {
  private static final Duration PATIENCE = Duration.ofSeconds(90);

  /** What starts a small Java quickly; it changes nothing that is looked at. */
  private static final List<String> QUICK =
      List.of("-XX:TieredStopAtLevel=1", "-XX:+UseSerialGC", "-Xmx128m");

  private final Process process;
  private final Path err;
  private final Thread reader;
  private final List<Said> out = new ArrayList<>();

  /** A line on standard output and when it was read. */
  record Said(long nanos, String line) {}

  private WatchLife(Process process, Path err) {
    this.process = process;
    this.err = err;
    this.reader = new Thread(this::read, "out");
    reader.setDaemon(true);
    reader.start();
  }

  static WatchLife start(Path folder, Object... args) throws IOException {
    List<String> command = new ArrayList<>(ProgramProcess.command(args));
    command.addAll(1, QUICK);
    Path err = Files.createTempFile(folder, "watch", ".err");
    return new WatchLife(new ProcessBuilder(command).redirectError(err.toFile()).start(), err);
  }

  private void read() {
    try (BufferedReader lines = process.inputReader(StandardCharsets.UTF_8)) {
      for (String line = lines.readLine(); line != null; line = lines.readLine()) {
        note(new Said(System.nanoTime(), line));
      }
    } catch (IOException e) {
      // The process is dead.
    }
  }

  private synchronized void note(Said said) {
    out.add(said);
  }

  synchronized List<Said> out() {
    return List.copyOf(out);
  }

  String err() {
    try {
      return Files.readString(err);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  Process process() {
    return process;
  }

  void awaitErr(String text) {
    Awaitility.await()
        .atMost(PATIENCE)
        .pollInterval(Duration.ofMillis(20))
        .until(() -> err().contains(text) || !process.isAlive());
    if (!err().contains(text)) {
      throw new AssertionError("ended without '" + text + "': " + err());
    }
  }

  /** Kills it at once, as {@code kill -9} does; gives the moment. */
  long kill() throws InterruptedException {
    long now = System.nanoTime();
    process.destroyForcibly();
    process.waitFor();
    reader.join();
    return now;
  }

  /** Asks it to stop; the exit code. */
  int stop() throws InterruptedException {
    process.destroy();
    if (!process.waitFor(PATIENCE.toSeconds(), TimeUnit.SECONDS)) {
      throw new AssertionError("does not stop: " + err());
    }
    reader.join();
    return process.exitValue();
  }
}
