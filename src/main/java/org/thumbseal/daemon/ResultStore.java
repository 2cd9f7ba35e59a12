package org.thumbseal.daemon;

import java.util.ArrayDeque;
import java.util.Deque;
import java.util.function.Supplier;
import org.thumbseal.archive.Archive;
import org.thumbseal.archive.ArchiveException;
import org.thumbseal.archive.OpenCaptures;
import org.thumbseal.archive.StoredResult;
import org.thumbseal.json.ResultTree;
import org.thumbseal.link.HostClock;
import org.thumbseal.record.ResultDocument;
import org.tinylog.Logger;
import tools.jackson.databind.node.ObjectNode;

/**
 * Where the recorders of all ports put their results: one at a time, for the chain is one. What the
 * disk does not take waits in memory, bounded, and is tried again about once a second.
 */
public final class ResultStore {
  /** Captures that may wait, and their bytes: more would not fit a small board. */
  private static final int MOST_WAITING = 200;

  private static final long MOST_BYTES = 64L << 20;

  private final Archive archive;
  private final BenchListener listener;
  private final Object unfolding = new Object();
  private final Health health;
  private final OpenCaptures open;
  private final DiskState.Retry disk;
  private final Deque<Unsaved> waiting = new ArrayDeque<>();
  private long bytes;

  /**
   * Writes into an open archive.
   *
   * @param clock times tries and lines about health
   * @param listener is told of results that are stored, and of trouble
   */
  public ResultStore(Archive archive, HostClock clock, BenchListener listener) {
    this.archive = archive;
    this.listener = listener;
    this.health = new Health(clock, listener::notice);
    this.open = archive.openCaptures();
    this.disk = health.disk().retry();
  }

  /** A file for what is under way at this port. */
  OpenRecording recording(String port) {
    return new OpenRecording(open.of(port), health.disk(), unfolding);
  }

  /** Held by the one port whose capture is unfolded, to be graded or to be written anew. */
  Object unfolding() {
    return unfolding;
  }

  /**
   * Says this too in each line about health.
   *
   * @param line from any thread, without waiting; empty where there is nothing to tell
   */
  public void healthAlso(Supplier<String> line) {
    health.also(line);
  }

  OpenCaptures open() {
    return open;
  }

  Health health() {
    return health;
  }

  /**
   * Seals and stores results with their capture, or keeps them until that can be done.
   *
   * @return whether all are stored
   */
  synchronized boolean take(Unsaved results) {
    health.graded(results.results().size());
    boolean first = waiting.isEmpty();
    waiting.addLast(results);
    bytes += results.capture().length;
    if (first || disk.isDue()) {
      storeAll();
    }
    boolean stored = results.results().isEmpty() && !results.refused();
    if (!stored) {
      results.refuse();
      results.results().forEach(result -> listener.waiting(results.port(), result));
    }
    dropOldest();
    return stored;
  }

  /**
   * Seals and stores a document that was made from no capture, at its turn among the results.
   *
   * @throws ArchiveException if it cannot be written; it does not wait for the disk as results do
   */
  public synchronized StoredResult seal(ObjectNode document) throws ArchiveException {
    return archive.store(document);
  }

  /** Tries again what waits, if it is time, and says how things are, if it is time. */
  public synchronized void tick() {
    if (!waiting.isEmpty() && disk.isDue()) {
      storeAll();
    } else if (health.disk().isUnproven() && disk.isDue()) {
      probe();
    }
    health.tick();
  }

  /**
   * Tries once more, puts what the disk still does not take where it is safe, says so, and says how
   * all went. Nothing is to be taken any more.
   *
   * @return whether everything is stored
   */
  public synchronized boolean finish() {
    storeAll();
    waiting.removeIf(results -> results.results().isEmpty());
    LastPlace last = new LastPlace(archive.path(), listener);
    waiting.stream().filter(results -> !last.isSafe(results)).forEach(this::lose);
    try {
      open.close();
    } catch (ArchiveException e) {
      disk.failed(String.valueOf(e.getMessage()));
    }
    health.finish();
    return health.isAllStored();
  }

  private void probe() {
    try {
      open.probe();
      disk.succeeded();
    } catch (ArchiveException e) {
      disk.failed(String.valueOf(e.getMessage()));
      disk.end();
    }
  }

  private void storeAll() {
    while (!waiting.isEmpty() && isStored(waiting.getFirst())) {
      forgetFirst();
    }
  }

  private void forgetFirst() {
    bytes -= waiting.removeFirst().capture().length;
  }

  private boolean isStored(Unsaved next) {
    try {
      while (!next.results().isEmpty()) {
        store(next, next.results().getFirst());
        next.results().removeFirst();
      }
      if (next.refused() && next.open().isPresent()) {
        open.remove(next.open().get());
      }
      return true;
    } catch (ArchiveException e) {
      next.refuse();
      disk.failed(String.valueOf(e.getMessage()));
      return false;
    } catch (RuntimeException e) {
      giveUp(next, e);
      return true;
    }
  }

  /** One that the program cannot store must not stand in the way of the others for ever. */
  private void giveUp(Unsaved next, RuntimeException why) {
    Logger.error(why, "{}: a result cannot be stored", next.port());
    next.refuse();
    lose(next);
    next.results().clear();
    listener.notice(
        next.port()
            + ": an error of this program, please report it: a result could not be stored; "
            + next.safeIn().map(file -> "its recording is in " + file).orElse("it is lost"));
  }

  private void store(Unsaved from, ResultDocument result) throws ArchiveException {
    StoredResult stored = archive.store(ResultTree.of(result), from.capture());
    health.stored();
    if (from.refused()) {
      health.disk().late();
    }
    disk.succeeded();
    listener.result(from.port(), result, stored.document());
  }

  private void dropOldest() {
    while (waiting.size() > MOST_WAITING || bytes > MOST_BYTES) {
      Unsaved oldest = waiting.getFirst();
      forgetFirst();
      if (oldest.safeIn().isPresent()) {
        listener.notice(
            oldest.port()
                + ": too many results wait; the oldest is stored at the next start, from "
                + oldest.safeIn().get());
      } else {
        lose(oldest);
        listener.notice(oldest.port() + ": too many results wait; the oldest is lost");
      }
    }
  }

  private void lose(Unsaved results) {
    health.lost(results.results().size());
  }
}
