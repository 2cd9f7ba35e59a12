package org.thumbseal.link;

import java.time.Duration;
import java.time.Instant;

/** The machine's own clocks. */
final class SystemClock implements HostClock {
  @Override
  public Instant wall() {
    return Instant.now();
  }

  @Override
  public long nanos() {
    return System.nanoTime();
  }

  @Override
  public void pause(Duration time) {
    if (time.isNegative()) {
      return;
    }
    try {
      Thread.sleep(time.toMillis(), time.toNanosPart() % 1_000_000);
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
    }
  }
}
