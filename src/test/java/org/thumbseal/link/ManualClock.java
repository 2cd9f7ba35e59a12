package org.thumbseal.link;

import java.time.Duration;
import java.time.Instant;
import java.util.List;
import java.util.concurrent.CopyOnWriteArrayList;
import java.util.concurrent.atomic.AtomicLong;

/** Time that passes only when somebody waits, or is told to. */
public final class ManualClock implements HostClock {
  private static final Instant START = Instant.parse("2026-03-02T07:15:00Z");

  private final AtomicLong nanos = new AtomicLong();
  private final List<Duration> pauses = new CopyOnWriteArrayList<>();

  @Override
  public Instant wall() {
    return START.plusNanos(nanos.get());
  }

  @Override
  public long nanos() {
    return nanos.get();
  }

  @Override
  public void pause(Duration time) {
    pauses.add(time);
    advance(time);
  }

  /** Lets time pass. */
  public void advance(Duration time) {
    nanos.addAndGet(time.toNanos());
  }

  /** How long was waited, one after another. */
  public List<Duration> pauses() {
    return pauses;
  }
}
