package org.thumbseal.page;

import java.util.concurrent.ArrayBlockingQueue;
import java.util.concurrent.BlockingQueue;

/**
 * Between the one who tells and a stream that may be slow. What does not fit is not waited for: the
 * stream is given up, and the page opens another and gets the whole state.
 */
final class Mailbox {
  /** About five seconds of a busy bench. */
  private static final int MOST = 256;

  private static final byte[] END = new byte[0];

  private final BlockingQueue<byte[]> events = new ArrayBlockingQueue<>(MOST);
  private volatile boolean closed;

  /** Whether there was room. */
  boolean offer(byte[] event) {
    return events.offer(event);
  }

  /** Waits for the next; empty bytes when nothing comes any more. */
  byte[] take() throws InterruptedException {
    return closed ? END : events.take();
  }

  /** Whether another is there already. */
  boolean hasMore() {
    return !events.isEmpty();
  }

  /** Nothing comes any more; what waits is thrown away. */
  void close() {
    closed = true;
    events.clear();
    events.offer(END);
  }
}
