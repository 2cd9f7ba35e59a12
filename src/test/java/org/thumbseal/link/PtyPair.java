package org.thumbseal.link;

import static org.awaitility.Awaitility.await;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import java.io.IOException;
import java.io.OutputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.stream.Stream;

/** Two pseudo-terminals joined by socat: the far end stands for a sensor. */
public final class PtyPair implements AutoCloseable {
  private final Path near;
  private final Path far;
  private Process socat;
  private OutputStream sensor;

  private PtyPair(Path near, Path far) throws IOException {
    this.near = near;
    this.far = far;
    plugIn();
  }

  /** Starts socat with its two ends in this folder; skips the test where there is none. */
  public static PtyPair in(Path folder) throws IOException {
    assumeTrue(installed(), "skipped: socat is not installed");
    return new PtyPair(folder.resolve("near"), folder.resolve("far"));
  }

  /** One of several in this folder, under a name of its own. */
  public static PtyPair named(Path folder, String name) throws IOException {
    assumeTrue(installed(), "skipped: socat is not installed");
    return new PtyPair(folder.resolve(name), folder.resolve(name + "-far"));
  }

  private static boolean installed() {
    return Stream.of(System.getenv("PATH").split(":"))
        .anyMatch(folder -> Files.isExecutable(Path.of(folder, "socat")));
  }

  /** Starts socat again on the same two names. */
  public void plugIn() throws IOException {
    socat =
        new ProcessBuilder("socat", "pty,raw,echo=0,link=" + near, "pty,raw,echo=0,link=" + far)
            .redirectErrorStream(true)
            .redirectOutput(ProcessBuilder.Redirect.DISCARD)
            .start();
    await().atMost(Duration.ofSeconds(20)).until(() -> Files.exists(near) && Files.exists(far));
    sensor = Files.newOutputStream(far);
  }

  /** The name under which a program opens the port. */
  public String port() {
    return near.toString();
  }

  /** Lets the sensor say this. */
  public void send(byte[] bytes) throws IOException {
    sensor.write(bytes);
  }

  /** Ends socat: both ends hang up, and their names go. */
  public void unplug() throws IOException {
    socat.destroy();
    await().atMost(Duration.ofSeconds(20)).until(() -> !socat.isAlive());
    sensor.close();
    Files.deleteIfExists(near);
    Files.deleteIfExists(far);
  }

  @Override
  public void close() throws IOException {
    unplug();
  }
}
