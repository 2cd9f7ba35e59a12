package org.thumbseal.cli;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.function.Supplier;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.awaitility.Awaitility;
import org.awaitility.core.ConditionFactory;

/** The program as a process of its own; what it says goes to two files. */
final class ProgramProcess implements AutoCloseable {
  private static final Pattern PAGE = Pattern.compile("page: (http://127\\.0\\.0\\.1:(\\d+)/)");
  private static final Duration PATIENCE = Duration.ofSeconds(60);

  private final Process process;
  private final Path out;
  private final Path err;

  private ProgramProcess(Process process, Path out, Path err) {
    this.process = process;
    this.out = out;
    this.err = err;
  }

  /** Starts it; the folder takes what it says. */
  static ProgramProcess start(Path folder, Object... args) throws IOException {
    Path out = Files.createTempFile(folder, "program", ".out");
    Path err = Files.createTempFile(folder, "program", ".err");
    ProcessBuilder builder = new ProcessBuilder(command(args));
    builder.redirectOutput(out.toFile()).redirectError(err.toFile());
    return new ProgramProcess(builder.start(), out, err);
  }

  /** A watch on one port without a page, for a known pump, jar and weather. */
  static ProgramProcess watch(Path folder, Object port, Path results, Path key) throws IOException {
    return start(
        folder,
        "watch",
        "--port",
        port,
        "--page",
        "off",
        "--results",
        results,
        "--key",
        key,
        "--asset",
        "SP-014",
        "--ambient-kpa",
        "101.1",
        "--jar-l",
        "2");
  }

  /** The command line of the built classes. */
  static List<String> command(Object... args) {
    List<String> command = new ArrayList<>();
    command.add(Path.of(System.getProperty("java.home"), "bin", "java").toString());
    command.addAll(List.of("-cp", System.getProperty("java.class.path"), Main.class.getName()));
    Arrays.stream(args).map(Object::toString).forEach(command::add);
    return command;
  }

  String out() {
    return read(out);
  }

  String err() {
    return read(err);
  }

  /** Waits until this stands on standard output. */
  void awaitOut(String text) {
    await(this::out, text);
  }

  /** Waits until this stands on standard error. */
  void awaitErr(String text) {
    await(this::err, text);
  }

  private void await(Supplier<String> said, String text) {
    patiently().until(() -> said.get().contains(text) || !process.isAlive());
    if (!said.get().contains(text)) {
      throw new AssertionError("ended without '" + text + "': " + out() + err());
    }
  }

  private static ConditionFactory patiently() {
    return Awaitility.await().atMost(PATIENCE).pollInterval(Duration.ofMillis(20));
  }

  /** Waits until it says where its page is: group 1 is the address, group 2 the port. */
  Matcher page() {
    awaitErr("page: http://127.0.0.1:");
    Matcher page = PAGE.matcher(err());
    if (!page.find()) {
      throw new AssertionError("no address of a page: " + err());
    }
    return page;
  }

  /** Waits until the process has a device open. */
  void awaitOpen(Path device) throws IOException {
    Path real = device.toRealPath();
    patiently().until(() -> holds(process, real));
  }

  /** Whether a process has a device open. */
  static boolean holds(Process process, Path device) throws IOException {
    try (Stream<Path> open = Files.list(Path.of("/proc", process.pid() + "", "fd"))) {
      return open.anyMatch(link -> pointsTo(link, device));
    }
  }

  private static boolean pointsTo(Path link, Path device) {
    try {
      return Files.readSymbolicLink(link).equals(device);
    } catch (IOException e) {
      // Closed since it was listed.
      return false;
    }
  }

  /** Sends a signal by its name, such as TERM. */
  void signal(String name) throws Exception {
    new ProcessBuilder("kill", "-" + name, Long.toString(process.pid())).start().waitFor();
  }

  /** Waits for the end; the exit code. */
  int awaitEnd() {
    patiently().until(() -> !process.isAlive());
    return process.exitValue();
  }

  private static String read(Path file) {
    try {
      return Files.readString(file);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  @Override
  public void close() {
    process.destroyForcibly();
  }
}
