package org.thumbseal.link;

import java.nio.charset.StandardCharsets;
import java.time.Duration;
import java.util.Iterator;
import java.util.OptionalLong;
import org.jspecify.annotations.Nullable;
import org.thumbseal.link.SimulatedSensor.TimedLine;

/** Hands out simulated lines when their time has come. */
final class SimulatedConnection implements LinkConnection {
  private static final Duration LONGEST_WAIT = Duration.ofMillis(250);
  private static final byte[] NOTHING = new byte[0];

  private final Iterator<TimedLine> lines;
  private final HostClock clock;
  private final double speed;
  private final long openedNanos;
  private @Nullable TimedLine next;
  private byte[] pending = NOTHING;
  private int taken;
  private long arrivedMicros;
  private volatile boolean closed;

  SimulatedConnection(Iterator<TimedLine> lines, HostClock clock, double speed) {
    this.lines = lines;
    this.clock = clock;
    this.speed = speed;
    this.openedNanos = clock.nanos();
  }

  @Override
  public int read(byte[] buffer) {
    if (closed) {
      return LOST;
    }
    if (taken == pending.length && !fetch()) {
      return next == null ? LOST : 0;
    }
    int count = Math.min(buffer.length, pending.length - taken);
    System.arraycopy(pending, taken, buffer, 0, count);
    taken += count;
    return count;
  }

  private boolean fetch() {
    if (next == null && lines.hasNext()) {
      next = lines.next();
    }
    if (next == null || !due(next)) {
      return false;
    }
    pending = (next.text() + "\n").getBytes(StandardCharsets.ISO_8859_1);
    taken = 0;
    arrivedMicros = next.hostMicros();
    next = null;
    return true;
  }

  private boolean due(TimedLine line) {
    long dueNanos = openedNanos + Math.round(line.hostMicros() * 1_000.0 / speed);
    long wait = dueNanos - clock.nanos();
    if (wait > LONGEST_WAIT.toNanos()) {
      clock.pause(LONGEST_WAIT);
      return false;
    }
    if (wait > 0) {
      clock.pause(Duration.ofNanos(wait));
    }
    return true;
  }

  @Override
  public OptionalLong arrivedMicros() {
    return OptionalLong.of(arrivedMicros);
  }

  @Override
  public Duration age() {
    return Duration.ofNanos(clock.nanos() - openedNanos);
  }

  @Override
  public void close() {
    closed = true;
  }
}
