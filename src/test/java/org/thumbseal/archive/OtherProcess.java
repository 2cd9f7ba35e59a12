package org.thumbseal.archive;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStreamReader;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.time.Duration;
import org.thumbseal.json.ExampleDocument;
import org.thumbseal.seal.KeyStore;

/** Another process at the same result directory. It says a line when it is where it should be. */
final class OtherProcess implements AutoCloseable {
  private final Process process;
  private final BufferedReader says;

  private OtherProcess(Process process) {
    this.process = process;
    this.says =
        new BufferedReader(
            new InputStreamReader(process.getInputStream(), StandardCharsets.US_ASCII));
  }

  /** What it is to do: store FROM TO KEY, write or watch. */
  static OtherProcess start(Path results, Object... task) throws IOException {
    String[] command = new String[task.length + 5];
    command[0] = Path.of(System.getProperty("java.home"), "bin", "java").toString();
    command[1] = "-cp";
    command[2] = System.getProperty("java.class.path");
    command[3] = OtherProcess.class.getName();
    command[4] = results.toString();
    for (int i = 0; i < task.length; i++) {
      command[5 + i] = task[i].toString();
    }
    ProcessBuilder builder = new ProcessBuilder(command);
    return new OtherProcess(builder.redirectError(ProcessBuilder.Redirect.DISCARD).start());
  }

  long pid() {
    return process.pid();
  }

  /** Waits for its line. */
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
    Path results = Path.of(args[0]);
    switch (args[1]) {
      case "store" -> store(results, args);
      case "write" -> {
        try (DirectoryLock lock = DirectoryLock.take(results, Duration.ZERO)) {
          lock.begin();
          waitForKill();
        }
      }
      case "watch" -> {
        try (DaemonLock lock = DaemonLock.take(results, LockHolder.here())) {
          System.out.print(lock.note());
          waitForKill();
        }
      }
      default -> throw new IllegalArgumentException(args[1]);
    }
  }

  private static void waitForKill() throws IOException {
    System.out.println("has it");
    // Ends with the test, too: then standard input does.
    int unused = System.in.read();
  }

  private static void store(Path results, String... args) throws Exception {
    try (Archive archive = Archive.open(results, KeyStore.load(Path.of(args[4])).key())) {
      System.out.println("open");
      for (int i = Integer.parseInt(args[2]); i <= Integer.parseInt(args[3]); i++) {
        archive.store(ExampleDocument.unsealed(i), new byte[] {'#'});
      }
    }
  }
}
