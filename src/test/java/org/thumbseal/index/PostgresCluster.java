package org.thumbseal.index;

import java.io.IOException;
import java.net.InetAddress;
import java.net.ServerSocket;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.SQLException;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.stream.Stream;
import org.awaitility.Awaitility;

/**
 * A PostgreSQL server of the tests' own: a fresh cluster in a temporary folder, on loopback and a
 * free port, started once and gone with the process. It refuses to run as root, so root starts it
 * as the user of Debian's package.
 */
final class PostgresCluster {
  static final String USER = "bench";
  static final String PASSWORD = "only-for-tests";
  private static final AtomicInteger SCHEMAS = new AtomicInteger();
  private static Optional<PostgresCluster> started = Optional.empty();
  private static boolean looked;

  private final int port;

  private PostgresCluster(int port) {
    this.port = port;
  }

  /** The one of this process; empty where no server program is to be found. */
  static synchronized Optional<PostgresCluster> find() {
    if (!looked) {
      looked = true;
      started = programs().map(PostgresCluster::start);
    }
    return started;
  }

  private static Optional<Path> programs() {
    try (Stream<Path> versions = Files.list(Path.of("/usr/lib/postgresql"))) {
      return versions
          .map(v -> v.resolve("bin"))
          .filter(b -> Files.isExecutable(b.resolve("initdb")))
          .sorted()
          .reduce((first, second) -> second);
    } catch (IOException e) {
      return Optional.empty();
    }
  }

  private static PostgresCluster start(Path programs) {
    try {
      Path folder = Files.createTempDirectory("thumbseal-postgres");
      Path password = Files.writeString(folder.resolve("password"), PASSWORD);
      own(folder);
      run(
          programs.resolve("initdb"),
          "-D",
          folder.resolve("data"),
          "-A",
          "scram-sha-256",
          "-U",
          USER,
          "--pwfile",
          password,
          "-E",
          "UTF8",
          "--locale=C.UTF-8",
          "--no-sync");
      int port = freePort();
      Process server =
          new ProcessBuilder(
                  command(
                      programs.resolve("postgres"),
                      "-D",
                      folder.resolve("data"),
                      "-h",
                      "127.0.0.1",
                      "-p",
                      port,
                      "-k",
                      "",
                      "-F"))
              .redirectErrorStream(true)
              .redirectOutput(folder.resolve("log").toFile())
              .start();
      Runtime.getRuntime().addShutdownHook(new Thread(() -> stop(server, folder)));
      PostgresCluster cluster = new PostgresCluster(port);
      Awaitility.await().atMost(Duration.ofSeconds(60)).until(cluster::answers);
      return cluster;
    } catch (IOException | InterruptedException e) {
      throw new IllegalStateException("PostgreSQL is here and does not start", e);
    }
  }

  private static void own(Path folder) throws IOException, InterruptedException {
    if (isRoot()) {
      run(Path.of("/bin/chown"), "-R", "postgres", folder);
    }
  }

  private static boolean isRoot() {
    return System.getProperty("user.name", "").equals("root");
  }

  private static List<String> command(Object... words) {
    List<String> command = new ArrayList<>();
    if (isRoot() && !words[0].toString().endsWith("chown")) {
      command.addAll(
          List.of("setpriv", "--reuid=postgres", "--regid=postgres", "--clear-groups", "--"));
    }
    Stream.of(words).forEach(word -> command.add(word.toString()));
    return command;
  }

  private static void run(Object... words) throws IOException, InterruptedException {
    Process process = new ProcessBuilder(command(words)).redirectErrorStream(true).start();
    String said = new String(process.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
    if (process.waitFor() != 0) {
      throw new IOException(command(words) + ": " + said);
    }
  }

  private static int freePort() throws IOException {
    try (ServerSocket socket = new ServerSocket(0, 1, InetAddress.getLoopbackAddress())) {
      return socket.getLocalPort();
    }
  }

  private static void stop(Process server, Path folder) {
    try {
      // An interrupt ends all sessions at once and in order.
      new ProcessBuilder("kill", "-INT", Long.toString(server.pid())).start().waitFor();
      if (!server.waitFor(20, TimeUnit.SECONDS)) {
        server.destroyForcibly();
      }
      new ProcessBuilder("rm", "-rf", folder.toString()).start().waitFor();
    } catch (IOException | InterruptedException e) {
      server.destroyForcibly();
    }
  }

  private boolean answers() {
    try (Connection connection = connect()) {
      return connection.isValid(1);
    } catch (SQLException e) {
      return false;
    }
  }

  private Connection connect() throws SQLException {
    return DriverManager.getConnection(url("postgres"), USER, PASSWORD);
  }

  String url(String base) {
    return "jdbc:postgresql://127.0.0.1:" + port + "/" + base;
  }

  void execute(String sql) throws SQLException {
    try (Connection connection = connect()) {
      connection.createStatement().execute(sql);
    }
  }

  /** A place of its own in the one base, as {@code --records} takes it. */
  String freshRecords() throws SQLException {
    String schema = "s" + SCHEMAS.incrementAndGet();
    execute("CREATE SCHEMA " + schema);
    return url("postgres") + "?user=" + USER + "&password=" + PASSWORD + "&currentSchema=" + schema;
  }
}
