package org.thumbseal.archive;

import java.io.IOException;
import java.io.InterruptedIOException;
import java.nio.file.Path;
import java.time.Duration;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.ConcurrentHashMap;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.locks.LockSupport;
import java.util.concurrent.locks.ReentrantLock;

/**
 * Held around each change of a result directory, so that several processes can write to it by
 * turns. While a document and its head are on their way the file bears a mark: found by the next
 * one, it tells that a write was cut short.
 */
final class DirectoryLock implements AutoCloseable {
  static final String NAME = ".lock";

  /** A store takes some hundredths of a second; a look through all documents some seconds. */
  static final Duration PATIENCE = Duration.ofSeconds(15);

  private static final long PAUSE = TimeUnit.MILLISECONDS.toNanos(10);

  /** Turns of the threads of this process; the system does not tell them apart. */
  private static final Map<Path, ReentrantLock> TURNS = new ConcurrentHashMap<>();

  private final ReentrantLock turn;
  private final LockFile file;

  private DirectoryLock(ReentrantLock turn, LockFile file) {
    this.turn = turn;
    this.file = file;
  }

  /**
   * Takes the lock for this thread; waits for others to finish their write.
   *
   * @throws ArchiveException if they do not within this time, or files cannot be locked there
   */
  static DirectoryLock take(Path directory, Duration patience)
      throws IOException, ArchiveException {
    long end = System.nanoTime() + patience.toNanos();
    ReentrantLock turn =
        TURNS.computeIfAbsent(directory.toRealPath(), path -> new ReentrantLock(true));
    if (turn.isHeldByCurrentThread()) {
      // Letting go of the inner lock would let go of the outer one too.
      throw new IllegalStateException("this thread has the directory already");
    }
    if (!within(patience, turn)) {
      throw busy(directory, "");
    }
    try {
      return new DirectoryLock(turn, locked(directory, end));
    } catch (IOException | ArchiveException | RuntimeException e) {
      turn.unlock();
      throw e;
    }
  }

  private static boolean within(Duration patience, ReentrantLock turn) throws IOException {
    try {
      return turn.tryLock(patience.toNanos(), TimeUnit.NANOSECONDS);
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
      throw new InterruptedIOException("told to stop while waiting for the directory");
    }
  }

  private static LockFile locked(Path directory, long end) throws IOException, ArchiveException {
    LockFile file = LockFile.open(directory.resolve(NAME));
    try {
      while (!file.tryLock(directory)) {
        if (System.nanoTime() - end >= 0) {
          throw busy(directory, file.holder().map(h -> " (" + h + ")").orElse(""));
        }
        LockSupport.parkNanos(PAUSE);
      }
      return file;
    } catch (IOException | ArchiveException | RuntimeException e) {
      file.close();
      throw e;
    }
  }

  private static ArchiveException busy(Path directory, String holder) {
    return new ArchiveException(
        "another thumbseal"
            + holder
            + " keeps "
            + directory
            + " locked; try again when it has finished its write, or stop it");
  }

  /** Whether a write was begun and not ended. */
  boolean writing() throws IOException {
    return file.marked();
  }

  /** Who began the write that was not ended, in a line. */
  String note() throws IOException {
    return "a write"
        + file.holder().map(h -> " (" + h + ")").orElse("")
        + " was cut short; looking for what it left";
  }

  /** Who began a write that was not ended, as far as it can be read. */
  Optional<LockHolder> holder() throws IOException {
    return file.holder();
  }

  /** Whether this was the last to begin one: another may have, since it failed. */
  boolean isMarkedBy(Optional<LockHolder> holder) throws IOException {
    return holder.isPresent() && file.holder().equals(holder);
  }

  LockHolder begin() throws IOException {
    LockHolder holder = LockHolder.here();
    file.mark(holder);
    return holder;
  }

  void end() throws IOException {
    if (file.marked()) {
      file.clear();
    }
  }

  @Override
  public void close() throws IOException {
    try {
      file.close();
    } finally {
      turn.unlock();
    }
  }
}
