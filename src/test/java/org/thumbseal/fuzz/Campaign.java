package org.thumbseal.fuzz;

import com.sun.management.ThreadMXBean;
import java.lang.management.ManagementFactory;
import java.util.Arrays;
import org.jspecify.annotations.Nullable;

/**
 * Many attempts on one target. Every input follows from the seed and its number, and the message of
 * a failure names both. Memory is held to account by what a thread has allocated, a hang by a
 * watchdog far slower than any input may be.
 */
final class Campaign {
  /** Allocated in all while one input is read; garbage counts, so it is no measure of the heap. */
  private static final long MOST_ALLOCATED = 512L << 20;

  private static final long HANG_SECONDS = 60;
  private static final long SPREAD = 0x9E3779B97F4A7C15L;

  private final String name;
  private final Target target;
  private final long seed;
  private volatile long at;
  private volatile boolean over;
  private volatile @Nullable Throwable fault;
  private long heaviest;

  Campaign(String name, Target target, long seed) {
    this.name = name;
    this.target = target;
    this.seed = seed;
  }

  /** Makes so many attempts, from this number on; throws at the first fault. */
  void run(long from, long count) {
    at = from;
    over = false;
    Thread worker = new Thread(() -> attempts(from, count), "fuzz " + name);
    worker.setDaemon(true);
    worker.start();
    watch(worker);
    Throwable found = fault;
    if (found != null) {
      throw new AssertionError(found.getMessage(), found.getCause());
    }
    target.settle();
  }

  /** The figures of the target, and the most that one input had allocated. */
  String figures() {
    return target.figures() + "most allocated for one input: " + (heaviest >> 10) + " KiB\n";
  }

  private void watch(Thread worker) {
    long seen = -1;
    try {
      while (!over) {
        // One look a minute: an input that is still the same has had far more than it needs.
        if (seen == at) {
          throw new AssertionError(
              where(at) + " hangs at " + Arrays.toString(worker.getStackTrace()));
        }
        seen = at;
        worker.join(HANG_SECONDS * 1_000);
      }
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
      throw new IllegalStateException(e);
    }
  }

  private void attempts(long from, long count) {
    try {
      for (long number = from; number < from + count; number++) {
        at = number;
        attempt(number);
      }
    } catch (Throwable e) {
      fault = e;
    } finally {
      over = true;
    }
  }

  private void attempt(long number) {
    Target.Attempt attempt = target.next(new Dice(seed * SPREAD + number));
    long before = allocated();
    try {
      attempt.run();
    } catch (Throwable e) {
      throw new AssertionError(where(number) + ": " + e + "\n" + Bytes.shown(attempt.input()), e);
    }
    long taken = allocated() - before;
    heaviest = Math.max(heaviest, taken);
    if (taken > MOST_ALLOCATED) {
      throw new AssertionError(where(number) + " allocated " + taken + " bytes");
    }
  }

  private String where(long number) {
    return "target " + name + ", seed " + seed + ", input " + number;
  }

  private static long allocated() {
    return ManagementFactory.getThreadMXBean() instanceof ThreadMXBean counting
        ? counting.getThreadAllocatedBytes(Thread.currentThread().getId())
        : 0;
  }
}
