package org.thumbseal.feed;

import java.io.Closeable;
import java.io.IOException;
import java.time.Duration;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.TimeUnit;
import org.thumbseal.link.HostClock;

/**
 * Closes a connection on which something takes longer than it may. A time limit on reading alone is
 * not enough: the other side may stop taking what is written, or answer a byte at a time.
 */
final class Watchdog implements AutoCloseable {
  private static final long NEVER = Long.MAX_VALUE;
  private static final long LOOK_MILLIS = 500;

  private final HostClock clock;
  private final Closeable connection;
  private final Duration patience;
  private final CountDownLatch closed = new CountDownLatch(1);
  private volatile long begun = NEVER;

  private Watchdog(HostClock clock, Closeable connection, Duration patience) {
    this.clock = clock;
    this.connection = connection;
    this.patience = patience;
  }

  /** Watches over this connection from now on. */
  static Watchdog over(Closeable connection, Duration patience, HostClock clock) {
    Watchdog dog = new Watchdog(clock, connection, patience);
    Thread thread = new Thread(dog::watch, "feed-patience");
    thread.setDaemon(true);
    thread.start();
    return dog;
  }

  /** Something begins that may take so long. */
  void begin() {
    begun = clock.nanos();
  }

  /** It is done. */
  void end() {
    begun = NEVER;
  }

  private void watch() {
    try {
      while (!closed.await(LOOK_MILLIS, TimeUnit.MILLISECONDS)) {
        long since = begun;
        if (since != NEVER && clock.nanos() - since > patience.toNanos()) {
          connection.close();
          return;
        }
      }
    } catch (IOException e) {
      // It is of no use any more in any case.
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
    }
  }

  @Override
  public void close() {
    closed.countDown();
  }
}
