package org.thumbseal.page;

import java.io.IOException;
import java.time.Duration;
import java.util.concurrent.Future;
import java.util.concurrent.ScheduledThreadPoolExecutor;
import java.util.concurrent.TimeUnit;

/**
 * Bounds the time in which an answer is taken. Who asks much and reads nothing fills the buffers
 * between us, and the thread that writes would wait for ever: a few such would hold all of them.
 */
final class AnswerTime implements AutoCloseable {
  /** For an answer on a slow network; ours are small. */
  static final Duration LONGEST = Duration.ofSeconds(5);

  private final ScheduledThreadPoolExecutor clock =
      new ScheduledThreadPoolExecutor(1, AnswerTime::thread);
  private final Duration longest;

  /** Writes an answer. */
  @FunctionalInterface
  interface Writing {
    void run() throws IOException;
  }

  AnswerTime(Duration longest) {
    this.longest = longest;
    clock.setRemoveOnCancelPolicy(true);
  }

  private static Thread thread(Runnable work) {
    Thread thread = new Thread(work, "page answers");
    thread.setDaemon(true);
    return thread;
  }

  /**
   * Writes, for so long at most.
   *
   * @throws IOException if the other end is gone, or took too long
   */
  void bound(Writing writing) throws IOException {
    Turn turn = new Turn(Thread.currentThread());
    Future<?> end = clock.schedule(turn::giveUp, longest.toMillis(), TimeUnit.MILLISECONDS);
    try {
      writing.run();
    } finally {
      turn.end();
      end.cancel(false);
    }
  }

  @Override
  public void close() {
    clock.shutdownNow();
  }

  /** One answer. */
  private static final class Turn {
    private final Thread writer;
    private boolean over;
    private boolean givenUp;

    Turn(Thread writer) {
      this.writer = writer;
    }

    /** Interrupting a thread in a write to a socket closes the socket. */
    synchronized void giveUp() {
      if (!over) {
        givenUp = true;
        writer.interrupt();
      }
    }

    /** What the thread does next must not be interrupted for this. */
    synchronized void end() {
      over = true;
      if (givenUp) {
        Thread.interrupted();
      }
    }
  }
}
