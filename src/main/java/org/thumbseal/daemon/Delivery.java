package org.thumbseal.daemon;

import java.util.function.Consumer;

/**
 * Hands what is in a queue to a handler until the last happening. When the handler throws, the rest
 * is taken and thrown away, so that the reader is never left waiting for room.
 */
final class Delivery implements Runnable {
  private final LineQueue queue;
  private final SessionHandler handler;
  private final Consumer<Throwable> onFailure;
  private boolean sessionOpen;
  private boolean failed;

  Delivery(LineQueue queue, SessionHandler handler, Consumer<Throwable> onFailure) {
    this.queue = queue;
    this.handler = handler;
    this.onFailure = onFailure;
  }

  @Override
  public void run() {
    try {
      Happening next = queue.take();
      while (!(next instanceof Happening.Last)) {
        deliver(next);
        next = queue.take();
      }
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
    }
  }

  private void deliver(Happening happening) {
    if (failed && !(happening instanceof Happening.Closed && sessionOpen)) {
      return;
    }
    sessionOpen &= !(happening instanceof Happening.Closed);
    try {
      happening.tell(handler);
      sessionOpen |= happening instanceof Happening.Opened;
    } catch (Throwable e) { // An Error here must not leave the reader waiting for ever.
      fail(e);
    }
  }

  private void fail(Throwable e) {
    if (!failed) {
      failed = true;
      onFailure.accept(e);
    }
  }
}
