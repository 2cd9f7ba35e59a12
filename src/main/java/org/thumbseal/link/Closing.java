package org.thumbseal.link;

import java.io.Closeable;
import java.io.IOException;
import java.time.Duration;

/** Letting go of things that may resist. */
final class Closing {
  private Closing() {}

  /** Closes what is being given up anyway: a failure changes nothing. */
  static void quietly(Closeable open) {
    try {
      open.close();
    } catch (IOException e) {
      return;
    }
  }

  /**
   * Runs an action that a driver may never return from. When the time is over it is left to itself
   * on a daemon thread.
   *
   * @return whether it ended in time
   */
  static boolean within(Duration limit, Runnable action) {
    Thread thread = new Thread(action, "link-closing");
    thread.setDaemon(true);
    thread.start();
    try {
      thread.join(limit.toMillis());
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
    }
    return !thread.isAlive();
  }
}
