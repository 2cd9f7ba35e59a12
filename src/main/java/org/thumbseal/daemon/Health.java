package org.thumbseal.daemon;

import java.time.Duration;
import java.util.Locale;
import java.util.concurrent.atomic.AtomicLong;
import java.util.function.Consumer;
import java.util.function.Supplier;
import org.thumbseal.link.HostClock;
import org.thumbseal.wire.Decoded;

/** Counts what all ports do, and says so in a line from time to time. For several threads. */
final class Health {
  private static final Duration WHEN_WELL = Duration.ofHours(1);
  private static final Duration WHEN_NOT = Duration.ofMinutes(10);

  private final AtomicLong graded = new AtomicLong();
  private final AtomicLong stored = new AtomicLong();
  private final AtomicLong lost = new AtomicLong();
  private final AtomicLong lines = new AtomicLong();
  private final AtomicLong rejected = new AtomicLong();
  private final AtomicLong dropped = new AtomicLong();
  private final HostClock clock;
  private final Consumer<String> notices;
  private final DiskState disk;
  private long saidNanos;
  private boolean saidGood = true;
  private boolean saidWaits;
  private volatile Supplier<String> more = () -> "";

  Health(HostClock clock, Consumer<String> notices) {
    this.clock = clock;
    this.notices = notices;
    this.disk = new DiskState(clock, notices);
    this.saidNanos = clock.nanos();
  }

  /** Says this too, where it is not empty. */
  void also(Supplier<String> line) {
    more = line;
  }

  DiskState disk() {
    return disk;
  }

  void graded(int results) {
    graded.addAndGet(results);
  }

  void stored() {
    stored.incrementAndGet();
  }

  void lost(int results) {
    lost.addAndGet(results);
  }

  boolean isAllStored() {
    return graded.get() == stored.get();
  }

  /** A line has come; one that does not fit, by its check sum or otherwise, is rejected. */
  void heard(Decoded line) {
    lines.incrementAndGet();
    if (line instanceof Decoded.Rejected) {
      rejected.incrementAndGet();
    }
  }

  /** So many lines were not taken in time. */
  void dropped(long count) {
    dropped.addAndGet(count);
  }

  /** Says the line if it is time: hourly, every ten minutes in trouble, and after each change. */
  synchronized void tick() {
    boolean good = disk.isGood();
    boolean waits = !isAllStored();
    Duration often = good && !waits ? WHEN_WELL : WHEN_NOT;
    if (good != saidGood || waits != saidWaits || clock.nanos() - saidNanos >= often.toNanos()) {
      saidGood = good;
      saidWaits = waits;
      say();
    }
  }

  /** Says the line at the end, if there was anything to be well or not. */
  void finish() {
    if (lines.get() > 0 || graded.get() > 0 || !disk.isGood()) {
      say();
    }
  }

  private synchronized void say() {
    saidNanos = clock.nanos();
    String also = more.get();
    notices.accept("health: " + line() + (also.isEmpty() ? "" : "; " + also));
  }

  private String line() {
    return String.format(
        Locale.ROOT,
        "%s graded, %d stored, %d waiting, %d lost; %d lines, %d rejected, %d dropped; %s",
        graded.get() == 1 ? "1 test" : graded.get() + " tests",
        stored.get(),
        graded.get() - stored.get() - lost.get(),
        lost.get(),
        lines.get(),
        rejected.get(),
        dropped.get(),
        disk.text());
  }
}
