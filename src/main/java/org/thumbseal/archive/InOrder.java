package org.thumbseal.archive;

import java.util.ArrayDeque;
import java.util.Deque;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.CompletionException;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.function.Consumer;
import java.util.function.Supplier;

/**
 * Does pieces of work on all processors and hands on what comes of them in the order in which they
 * were given. Only a few are in the making at a time, so that memory does not grow with their
 * number. For use by one thread.
 */
public final class InOrder<T> implements AutoCloseable {
  private static final int AHEAD = 8;

  private final Consumer<T> taker;
  private final int most;
  private final ExecutorService workers;
  private final Deque<CompletableFuture<T>> begun = new ArrayDeque<>();

  /** Hands on to {@code taker}, in the thread that gives the work. */
  public InOrder(Consumer<T> taker) {
    int processors = Runtime.getRuntime().availableProcessors();
    this.taker = taker;
    this.most = AHEAD * processors;
    this.workers = Executors.newFixedThreadPool(processors, InOrder::thread);
  }

  /** Gives work; may wait for the oldest and hand it on first. */
  public void give(Supplier<T> work) {
    if (begun.size() >= most) {
      handOn();
    }
    begun.add(CompletableFuture.supplyAsync(work, workers));
  }

  /** Waits for all that was given. */
  public void finish() {
    while (!begun.isEmpty()) {
      handOn();
    }
  }

  @Override
  public void close() {
    workers.shutdownNow();
  }

  private void handOn() {
    try {
      taker.accept(begun.remove().join());
    } catch (CompletionException e) {
      // An error of one piece ends the whole, as it would without threads.
      if (e.getCause() instanceof Error error) {
        throw error;
      }
      throw e.getCause() instanceof RuntimeException cause ? cause : e;
    }
  }

  private static Thread thread(Runnable work) {
    Thread thread = new Thread(work, "check");
    thread.setDaemon(true);
    return thread;
  }
}
