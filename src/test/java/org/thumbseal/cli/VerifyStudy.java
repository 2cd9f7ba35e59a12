package org.thumbseal.cli;

import static java.util.stream.Collectors.joining;

import java.io.File;
import java.io.IOException;
import java.net.URL;
import java.net.URLClassLoader;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.stream.Stream;
import org.thumbseal.archive.LargeDirectory;
import org.thumbseal.seal.KeyStore;
import org.thumbseal.seal.OpenedKey;

/**
 * How long {@code verify} takes for large directories, and how much memory: makes directories of
 * the sizes named, verifies each in a process of its own, and prints a table. With the word {@code
 * report} before a size a page of each result is made instead, of a real recording.
 *
 * <pre>
 * mvn -q test-compile exec:java -Dexec.classpathScope=test \
 *     -DmainClass=org.thumbseal.cli.VerifyStudy -Dexec.args="10000 30000 100000"
 * </pre>
 *
 * <p>Peak memory is what the kernel counts as the most that the whole process held (VmHWM), so it
 * needs Linux; time of the processor is there because other work on the machine does not lengthen
 * it. {@code -Xmx} or other options for Java may stand among the sizes; they hold for those after
 * them.
 */
final class VerifyStudy {
  private static final String PEAK = "VmHWM:";
  private static final String CPU = "CPU ms:";

  private VerifyStudy() {}

  /** Sizes to try, or {@code --child} and what to do there. */
  public static void main(String[] args) throws Exception {
    if (args.length > 0 && args[0].equals("--child")) {
      child(Arrays.copyOfRange(args, 1, args.length));
      return;
    }
    row("documents", "options", "seconds", "cpu s", "cpu ms/document", "MiB");
    List<String> options = new ArrayList<>();
    boolean report = false;
    for (String arg : args) {
      if (arg.equals("report")) {
        report = true;
      } else if (arg.startsWith("-")) {
        options.clear();
        options.addAll(List.of(arg.split(",")));
      } else {
        measure(Integer.parseInt(arg), options, report);
      }
    }
  }

  private static void measure(int documents, List<String> options, boolean report)
      throws Exception {
    Path folder = Files.createTempDirectory("verify-study");
    try {
      OpenedKey key = KeyStore.create(folder.resolve("key/k.pem"));
      Path results = Files.createDirectory(folder.resolve("results"));
      List<String> command = new ArrayList<>(List.of("--key", key.file().toString()));
      command.add(results.toString());
      if (report) {
        LargeDirectory.writeReal(results, documents, key.key());
        command.addAll(0, List.of("report", "-o", folder.resolve("pages").toString()));
      } else {
        LargeDirectory.write(results, documents, key.key());
        command.add(0, "verify");
      }
      run(documents, options, command);
    } finally {
      delete(folder);
    }
  }

  private static void run(int documents, List<String> options, List<String> arguments)
      throws Exception {
    List<String> command = new ArrayList<>();
    command.add(Path.of(System.getProperty("java.home"), "bin", "java").toString());
    command.addAll(options);
    command.addAll(List.of("-cp", classPath(), VerifyStudy.class.getName(), "--child"));
    command.addAll(arguments);
    long start = System.nanoTime();
    Process process = new ProcessBuilder(command).redirectErrorStream(true).start();
    String said = new String(process.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
    int code = process.waitFor();
    double seconds = (System.nanoTime() - start) / 1e9;
    if (code != ExitCode.GOOD) {
      throw new IllegalStateException("exit code " + code + ": " + said);
    }
    double cpu = said(CPU, said) / 1e3;
    row(
        documents,
        options.isEmpty() ? "none" : String.join(" ", options),
        rounded(seconds),
        rounded(cpu),
        rounded(1e3 * cpu / documents),
        Math.round(said(PEAK, said) / 1024));
  }

  private static void row(Object... cells) {
    System.out.printf("%10s  %-20s %9s %9s %15s %6s%n", cells);
  }

  private static String rounded(double value) {
    return String.format(Locale.ROOT, "%.1f", value);
  }

  /** Under exec:java the class path of this process is that of Maven. */
  private static String classPath() {
    return VerifyStudy.class.getClassLoader() instanceof URLClassLoader loader
        ? Arrays.stream(loader.getURLs()).map(URL::getPath).collect(joining(File.pathSeparator))
        : System.getProperty("java.class.path");
  }

  private static double said(String name, String said) {
    return said.lines()
        .filter(line -> line.startsWith(name))
        .mapToDouble(line -> Double.parseDouble(line.replaceAll("\\D", "")))
        .findFirst()
        .orElse(Double.NaN);
  }

  private static void child(String[] args) throws IOException {
    int code = Main.run(args, new Streams(System.in, System.out, System.err));
    try (Stream<String> lines = Files.lines(Path.of("/proc/self/status"))) {
      lines.filter(line -> line.startsWith(PEAK)).forEach(System.out::println);
    }
    Duration cpu = ProcessHandle.current().info().totalCpuDuration().orElse(Duration.ZERO);
    System.out.println(CPU + cpu.toMillis());
    System.exit(code);
  }

  private static void delete(Path folder) throws IOException {
    try (Stream<Path> all = Files.walk(folder)) {
      for (Path path : all.sorted(Comparator.reverseOrder()).toList()) {
        Files.delete(path);
      }
    }
  }
}
