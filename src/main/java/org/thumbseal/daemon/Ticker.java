package org.thumbseal.daemon;

import java.time.Duration;
import org.thumbseal.link.HostClock;
import org.tinylog.Logger;

/** Does something about once a second, on a thread of its own. */
public final class Ticker {
  private static final Duration PERIOD = Duration.ofSeconds(1);

  private final HostClock clock;
  private final Runnable task;
  private volatile boolean stopped;

  private Ticker(HostClock clock, Runnable task) {
    this.clock = clock;
    this.task = task;
  }

  /** Begins. */
  public static Ticker start(HostClock clock, Runnable task) {
    Ticker ticker = new Ticker(clock, task);
    Thread thread = new Thread(ticker::run, "tick");
    thread.setDaemon(true);
    thread.start();
    return ticker;
  }

  private void run() {
    while (!stopped) {
      clock.pause(PERIOD);
      if (!stopped) {
        runOnce();
      }
    }
  }

  /** What goes wrong once is no reason never to look again; it is told where it is found. */
  private void runOnce() {
    try {
      task.run();
    } catch (RuntimeException e) {
      Logger.error(e, "a look at the bench failed");
    }
  }

  /** The task is not begun any more; it may be under way. */
  public void stop() {
    stopped = true;
  }
}
