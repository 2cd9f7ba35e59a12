package org.thumbseal.index;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStreamReader;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.thumbseal.seal.TrustStore;

/** Another process that takes a results directory into a base; says a line when it begins. */
final class IndexProcess implements AutoCloseable {
  /** So little that an index of many results would not fit into it. */
  static final String MEMORY = "-Xmx96m";

  private final Process process;
  private final BufferedReader says;

  private IndexProcess(Process process) {
    this.process = process;
    this.says =
        new BufferedReader(
            new InputStreamReader(process.getInputStream(), StandardCharsets.US_ASCII));
  }

  /** Starts it; the key is a file of a JWK. */
  static IndexProcess start(String task, String base, Path results, Path key) throws IOException {
    List<String> command =
        List.of(
            Path.of(System.getProperty("java.home"), "bin", "java").toString(),
            MEMORY,
            "-cp",
            System.getProperty("java.class.path"),
            IndexProcess.class.getName(),
            task,
            base,
            results.toString(),
            key.toString());
    ProcessBuilder builder = new ProcessBuilder(command);
    return new IndexProcess(builder.redirectError(ProcessBuilder.Redirect.DISCARD).start());
  }

  String line() throws IOException {
    return String.valueOf(says.readLine());
  }

  /** As a power cut would end it. */
  void kill() throws InterruptedException {
    process.destroyForcibly().waitFor();
  }

  int awaitEnd() throws InterruptedException {
    return process.waitFor();
  }

  @Override
  public void close() {
    process.destroyForcibly();
  }

  /** The other process itself. */
  @SuppressWarnings("SystemOut") // How it speaks to the test.
  public static void main(String... args) throws Exception {
    TrustStore trust = TrustStore.load(List.of(Path.of(args[3])));
    try (Records records = Records.open(RecordsAddress.parse(args[1]), IndexProcess::say)) {
      System.out.println("begun");
      Path results = Path.of(args[2]);
      Refreshed refreshed =
          args[0].equals("rebuild")
              ? records.rebuild(List.of(results), trust)
              : records.refresh(results, trust);
      System.out.println(refreshed.added());
      System.out.println(memory());
    }
  }

  /** The most that this process ever held, as Linux tells it. */
  private static String memory() throws IOException {
    Path status = Path.of("/proc/self/status");
    if (!Files.exists(status)) {
      return "";
    }
    return Files.readAllLines(status).stream()
        .filter(line -> line.startsWith("VmHWM"))
        .findFirst()
        .orElse("");
  }

  @SuppressWarnings("SystemOut") // How it speaks to the test.
  private static void say(String line) {
    System.out.println(line);
  }
}
