package org.thumbseal.cli;

import static java.nio.charset.StandardCharsets.ISO_8859_1;
import static java.util.stream.Collectors.joining;

import java.io.File;
import java.io.IOException;
import java.net.URL;
import java.net.URLClassLoader;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.concurrent.TimeUnit;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.thumbseal.page.OpenPage;
import tools.jackson.databind.JsonNode;

/**
 * Many sensors at once into one {@code watch} with little memory: simulated sensors of this
 * process, whose work is therefore not counted, send over TCP in real time; {@code watch} is a
 * process of its own, and a page of it is open all the time. Prints what was lost on the way, time
 * of the processor and peak memory.
 *
 * <pre>
 * mvn -q package -DskipTests
 * java -cp target/test-classes:target/classes:$(cat target/classpath) \
 *     org.thumbseal.cli.LoadStudy 10 16 200
 * </pre>
 *
 * <p>Some of the simulated sensors begin with half a line, which is sent and not counted as
 * arrived.
 *
 * <p>The arguments are minutes, sensors and readings a second. {@code target/thumbseal.jar} is run
 * where it is there, else the classes. Peak memory is what the kernel counts as the most that the
 * whole process held (VmHWM), so it needs Linux. Not a test: it judges nothing but losses.
 */
final class LoadStudy {
  private static final Path JAR = Path.of("target", "thumbseal.jar");
  private static final Pattern HEALTH =
      Pattern.compile(
          "health: (\\d+) tests? graded, (\\d+) stored, .* (\\d+) lines, (\\d+) rejected, (\\d+) dropped.*");

  private final Path folder;
  private final List<SimulatedServer> sensors;

  private LoadStudy(Path folder, List<SimulatedServer> sensors) {
    this.folder = folder;
    this.sensors = sensors;
  }

  /** Minutes, sensors, readings a second. */
  public static void main(String[] args) throws Exception {
    int minutes = Integer.parseInt(args[0]);
    List<SimulatedServer> sensors = new ArrayList<>();
    for (int i = 0; i < Integer.parseInt(args[1]); i++) {
      sensors.add(SimulatedServer.start(i + 1, Double.parseDouble(args[2]), minutes));
    }
    new LoadStudy(Files.createTempDirectory("load-study"), sensors).run(minutes);
  }

  private void run(int minutes) throws Exception {
    Path err = folder.resolve("err");
    Process watch =
        new ProcessBuilder(command())
            .redirectError(err.toFile())
            .redirectOutput(folder.resolve("out").toFile())
            .start();
    Runtime.getRuntime().addShutdownHook(new Thread(watch::destroyForcibly));
    OpenPage page = OpenPage.of(folder.resolve("results"), watch);
    say("minute  cpu s  resident MiB  peak MiB  load of the machine");
    Duration before = Duration.ZERO;
    for (int minute = 1; minute <= minutes; minute++) {
      if (watch.waitFor(1, TimeUnit.MINUTES)) {
        throw new IllegalStateException("watch has ended: " + Files.readString(err));
      }
      Duration cpu = watch.info().totalCpuDuration().orElse(Duration.ZERO);
      say(
          "%6d  %5.1f  %12d  %8d  %s",
          minute,
          cpu.minus(before).toMillis() / 1e3,
          mebibytes(watch, "VmRSS:"),
          mebibytes(watch, "VmHWM:"),
          Files.readString(Path.of("/proc/loadavg")).replaceAll("^(\\S+).*\\s*", "$1"));
      before = cpu;
    }
    finish(watch, err, page);
  }

  private void finish(Process watch, Path err, OpenPage page) throws Exception {
    long sent = 0;
    for (SimulatedServer sensor : sensors) {
      sent += sensor.stop();
    }
    // What is on its way arrives; the end of the connections is not waited for.
    watch.waitFor(2, TimeUnit.SECONDS);
    long peak = mebibytes(watch, "VmHWM:");
    Duration cpu = watch.info().totalCpuDuration().orElse(Duration.ZERO);
    int onDisk = new ResultFiles(folder.resolve("results")).documents().size();
    say("%s; results on the disk %d", page.close(), onDisk);
    watch.destroy();
    int code = watch.waitFor();
    judge(Files.readString(err), sent);
    say(
        "exit code %d, cpu %.1f s, %.1f microseconds a line, peak %d MiB; left in %s",
        code, cpu.toMillis() / 1e3, cpu.toNanos() / 1e3 / sent, peak, folder);
    System.exit(0);
  }

  private void judge(String err, long sent) throws Exception {
    List<String> health = err.lines().filter(line -> line.contains("health: ")).toList();
    Matcher last = HEALTH.matcher(health.isEmpty() ? "" : health.get(health.size() - 1));
    if (!last.find()) {
      throw new IllegalStateException("no line about health: " + err);
    }
    say("%s", last.group());
    say("lines sent %d, not arrived %d", sent, sent - Long.parseLong(last.group(3)));
    int results = 0;
    long gaps = 0;
    for (Path document : new ResultFiles(folder.resolve("results")).documents()) {
      JsonNode quality = ResultFiles.read(document).path("quality");
      results++;
      gaps += quality.path("gaps").asLong();
    }
    say("results %d, gaps in them %d", results, gaps);
  }

  private List<String> command() {
    List<String> command = new ArrayList<>();
    command.add(Path.of(System.getProperty("java.home"), "bin", "java").toString());
    command.add("-Xmx64m");
    command.addAll(
        Files.exists(JAR)
            ? List.of("-jar", JAR.toString())
            : List.of("-cp", classPath(), Main.class.getName()));
    command.addAll(List.of("watch", "--results", folder.resolve("results").toString()));
    command.addAll(List.of("--key", folder.resolve("key.pem").toString()));
    sensors.forEach(sensor -> command.addAll(List.of("--port", sensor.address())));
    return command;
  }

  /** Under exec:java the class path of this process is that of Maven. */
  private static String classPath() {
    return LoadStudy.class.getClassLoader() instanceof URLClassLoader loader
        ? Arrays.stream(loader.getURLs()).map(URL::getPath).collect(joining(File.pathSeparator))
        : System.getProperty("java.class.path");
  }

  private static long mebibytes(Process process, String name) throws IOException {
    try (Stream<String> lines =
        Files.lines(Path.of("/proc", process.pid() + "", "status"), ISO_8859_1)) {
      return lines
          .filter(line -> line.startsWith(name))
          .mapToLong(line -> Long.parseLong(line.replaceAll("\\D", "")) / 1024)
          .findFirst()
          .orElse(-1);
    }
  }

  private static void say(String format, Object... values) {
    System.out.printf(Locale.ROOT, format + "%n", values);
  }
}
