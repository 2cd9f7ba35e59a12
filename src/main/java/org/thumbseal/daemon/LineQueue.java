package org.thumbseal.daemon;

import java.util.concurrent.ArrayBlockingQueue;
import java.util.concurrent.BlockingQueue;

/**
 * Between the thread that reads a port and the one that takes its lines. Bounded: when it is full,
 * either the reader waits (a source that can) or lines are dropped, counted, and the count is told
 * before the next line. One thread puts, one takes.
 */
final class LineQueue {
  private final BlockingQueue<Happening> queue;
  private long dropped;

  LineQueue(int capacity) {
    this.queue = new ArrayBlockingQueue<>(capacity);
  }

  /** A line of a source that goes on whether it is heard or not. */
  void offerLine(long hostMicros, String text) {
    if (tellDropped(hostMicros, 2)) {
      queue.add(new Happening.Line(hostMicros, text));
    } else {
      dropped++;
    }
  }

  /** The passing of time; left out when there is enough to do anyway. */
  void offerQuiet(long hostMicros) {
    if (tellDropped(hostMicros, 2)) {
      queue.add(new Happening.Quiet(hostMicros));
    }
  }

  /** A happening that must not be lost: waits for room. */
  void put(Happening happening) {
    boolean interrupted = false;
    boolean placed = false;
    while (!placed) {
      try {
        queue.put(happening);
        placed = true;
      } catch (InterruptedException e) {
        interrupted = true;
      }
    }
    if (interrupted) {
      Thread.currentThread().interrupt();
    }
  }

  /** The end of a session: what was dropped is told before it. */
  void putClosed(long hostMicros, String why) {
    if (dropped > 0) {
      put(new Happening.Lost(hostMicros, dropped));
      dropped = 0;
    }
    put(new Happening.Closed(hostMicros, why));
  }

  Happening take() throws InterruptedException {
    return queue.take();
  }

  // Room only grows while this thread looks, for nobody else puts.
  private boolean tellDropped(long hostMicros, int room) {
    if (queue.remainingCapacity() < room) {
      return false;
    }
    if (dropped > 0) {
      queue.add(new Happening.Lost(hostMicros, dropped));
      dropped = 0;
    }
    return true;
  }
}
