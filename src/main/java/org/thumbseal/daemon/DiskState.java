package org.thumbseal.daemon;

import java.time.Duration;
import java.time.Instant;
import java.time.ZoneOffset;
import java.time.format.DateTimeFormatter;
import java.util.HashMap;
import java.util.Locale;
import java.util.Map;
import java.util.function.Consumer;
import org.thumbseal.link.HostClock;

/**
 * Whether the result directory takes what is written. A change is told once, whoever notices it,
 * and then only counted. For several threads.
 */
final class DiskState {
  /** Between two tries to write to a disk that refused. */
  private static final Duration PATIENCE = Duration.ofSeconds(1);

  private static final DateTimeFormatter TIME =
      DateTimeFormatter.ofPattern("uuuu-MM-dd HH:mm:ss'Z'", Locale.ROOT).withZone(ZoneOffset.UTC);

  private final HostClock clock;
  private final Consumer<String> notices;
  private final Map<Object, String> refused = new HashMap<>();
  private Instant since;
  private String why = "";
  private long tries;
  private long late;
  private boolean unproven;

  DiskState(HostClock clock, Consumer<String> notices) {
    this.clock = clock;
    this.notices = notices;
    this.since = clock.wall();
  }

  /** A writer was refused. */
  synchronized void refused(Object writer, String reason) {
    if (isGood()) {
      since = clock.wall();
      tries = 0;
      late = 0;
    }
    // Another reason is another thing to do: the directory is back, but read-only now.
    boolean news = isGood() || !reason.equals(refused.getOrDefault(writer, reason));
    tries++;
    why = reason;
    refused.put(writer, reason);
    if (news) {
      notices.accept(
          reason
              + "; until then tests go on and results are kept in memory: do not stop this"
              + " program");
    }
  }

  /** A writer was not refused. */
  synchronized void taken(Object writer) {
    boolean good = isGood();
    refused.remove(writer);
    unproven &= !refused.isEmpty();
    if (!good && isGood()) {
      long seconds = Duration.between(since, clock.wall()).toSeconds();
      since = clock.wall();
      notices.accept("results can be written again after " + seconds + " s; written late: " + late);
    }
  }

  /** A writer that may have been refused has nothing to write any more. */
  private synchronized void ended(Object writer) {
    if (refused.remove(writer) != null) {
      unproven = true;
    }
  }

  /** Whether it refused at last, and nobody is trying any more. */
  synchronized boolean isUnproven() {
    return unproven && refused.isEmpty();
  }

  /** A result was written that had been refused before. */
  synchronized void late() {
    late++;
  }

  synchronized boolean isGood() {
    return refused.isEmpty() && !unproven;
  }

  /** In words, for a line about health. */
  synchronized String text() {
    return isGood()
        ? "disk ok since " + TIME.format(since)
        : "disk refuses since " + TIME.format(since) + " (" + tries + " tries): " + why;
  }

  /** Lets somebody try again only so often. */
  Retry retry() {
    return new Retry();
  }

  /** When one writer may try again. */
  final class Retry {
    private long failedNanos;
    private boolean failed;

    boolean isDue() {
      return !failed || clock.nanos() - failedNanos >= PATIENCE.toNanos();
    }

    void failed(String reason) {
      failed = true;
      failedNanos = clock.nanos();
      refused(this, reason);
    }

    void succeeded() {
      failed = false;
      taken(this);
    }

    /** There is nothing to write any more. */
    void end() {
      failed = false;
      ended(this);
    }
  }
}
