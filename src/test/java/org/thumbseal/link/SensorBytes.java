package org.thumbseal.link;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.time.Duration;
import java.util.Optional;
import org.thumbseal.wire.Crc16;

/** A sensor that says its readings one by one in real time, on a thread of its own. */
public final class SensorBytes implements AutoCloseable {
  private final Thread thread;
  private volatile boolean stopped;
  private volatile Optional<IOException> failure = Optional.empty();

  private SensorBytes(double hertz, int seconds, Sending sending) {
    this.thread = new Thread(() -> speak(hertz, seconds, sending), "sensor");
    thread.setDaemon(true);
    thread.start();
  }

  /** Where the bytes go. */
  @FunctionalInterface
  public interface Sending {
    /** Takes the next bytes. */
    void send(byte[] bytes) throws IOException;
  }

  /** Begins. */
  public static SensorBytes at(double hertz, int seconds, Sending sending) {
    return new SensorBytes(hertz, seconds, sending);
  }

  private void speak(double hertz, int seconds, Sending sending) {
    HostClock clock = HostClock.system();
    long period = Math.round(1e9 / hertz);
    long began = clock.nanos();
    try {
      for (long n = 0; n * period < seconds * 1_000_000_000L && !stopped; n++) {
        clock.pause(Duration.ofNanos(began + n * period - clock.nanos()));
        String line = Crc16.seal("S," + n + "," + n * period / 1_000 + ",-35") + "\n";
        sending.send(line.getBytes(StandardCharsets.US_ASCII));
      }
    } catch (IOException e) {
      failure = Optional.of(e);
    }
  }

  /** Why it could not speak on. */
  public Optional<IOException> failure() {
    return failure;
  }

  @Override
  public void close() {
    stopped = true;
    try {
      thread.join();
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
    }
  }
}
