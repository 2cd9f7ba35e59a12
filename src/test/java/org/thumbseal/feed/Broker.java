package org.thumbseal.feed;

import static org.junit.jupiter.api.Assumptions.assumeTrue;

import java.io.IOException;
import java.net.InetAddress;
import java.net.InetSocketAddress;
import java.net.ServerSocket;
import java.net.Socket;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.List;
import java.util.stream.Stream;
import org.awaitility.Awaitility;

/** A mosquitto of the tests' own, on loopback and a free port, that can be stopped and started. */
final class Broker implements AutoCloseable {
  private static final List<Path> PLACES =
      List.of(Path.of("/usr/sbin/mosquitto"), Path.of("/usr/bin/mosquitto"));

  private final Path folder;
  private final Path program;
  private final int port;
  private Process process;

  private Broker(Path folder, Path program, int port) throws IOException {
    this.folder = folder;
    this.program = program;
    this.port = port;
    this.process = begin();
  }

  /** Whether the programs of Debian's packages mosquitto and mosquitto-clients are here. */
  static Path program() {
    Path found = PLACES.stream().filter(Files::isExecutable).findFirst().orElse(Path.of(""));
    assumeTrue(Files.isExecutable(found), "skipped: mosquitto is not installed");
    assumeTrue(
        Files.isExecutable(Path.of("/usr/bin/mosquitto_sub")),
        "skipped: mosquitto-clients is not installed");
    return found;
  }

  /** Starts one that keeps its sessions, with these lines more in its configuration. */
  static Broker in(Path folder, String... more) throws IOException {
    Path program = program();
    int port = freePort();
    Files.createDirectories(folder);
    List<String> lines =
        List.of(
            "user root",
            "persistence true",
            "persistence_location " + folder + "/",
            "persistence_file kept.db",
            "max_queued_messages 0",
            "log_type all",
            "listener " + port + " 127.0.0.1");
    Files.write(
        folder.resolve("broker.conf"), Stream.concat(lines.stream(), Stream.of(more)).toList());
    return new Broker(folder, program, port);
  }

  /** A port of loopback that nobody has now. */
  static int freePort() throws IOException {
    try (ServerSocket socket = new ServerSocket(0, 1, InetAddress.getLoopbackAddress())) {
      return socket.getLocalPort();
    }
  }

  private Process begin() throws IOException {
    Process begun =
        new ProcessBuilder(program.toString(), "-c", folder.resolve("broker.conf").toString())
            .redirectErrorStream(true)
            .redirectOutput(ProcessBuilder.Redirect.appendTo(folder.resolve("broker.log").toFile()))
            .start();
    Awaitility.await()
        .atMost(Duration.ofSeconds(20))
        .pollInterval(Duration.ofMillis(20))
        .until(() -> !begun.isAlive() || answers());
    if (!begun.isAlive()) {
      throw new AssertionError(log());
    }
    return begun;
  }

  private boolean answers() {
    try (Socket socket = new Socket()) {
      socket.connect(new InetSocketAddress(InetAddress.getLoopbackAddress(), port), 1000);
      return true;
    } catch (IOException e) {
      return false;
    }
  }

  /** All that it has said. */
  String log() throws IOException {
    return Files.readString(folder.resolve("broker.log"));
  }

  int port() {
    return port;
  }

  /** In order: it writes down what it has taken. */
  void stop() throws InterruptedException {
    process.destroy();
    process.waitFor();
  }

  void start() throws IOException {
    process = begin();
  }

  @Override
  public void close() {
    process.destroyForcibly();
  }
}
