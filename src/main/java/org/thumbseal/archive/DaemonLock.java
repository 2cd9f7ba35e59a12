package org.thumbseal.archive;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.FileTime;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.concurrent.ConcurrentHashMap;
import java.util.concurrent.atomic.AtomicBoolean;
import org.jspecify.annotations.Nullable;

/**
 * Held by a daemon for as long as it uses a result directory, so that no second one begins there.
 * Commands that only add a document do not need it.
 */
final class DaemonLock implements AutoCloseable {
  static final String NAME = ".watch-lock";

  /** Directories that this very process holds; the system does not tell its own threads apart. */
  private static final Map<Path, LockHolder> HELD_HERE = new ConcurrentHashMap<>();

  private final Path directory;
  private final LockFile file;
  private final String note;
  private final @Nullable FileTime marked;
  private final AtomicBoolean closed = new AtomicBoolean();

  private DaemonLock(Path directory, LockFile file, String note) {
    this.directory = directory;
    this.file = file;
    this.note = note;
    this.marked = time();
  }

  /** Whether the directory that bears the name is the one whose lock this is. */
  boolean isHere() {
    return Objects.equals(marked, time());
  }

  /** Not by its content: who opens the file and closes it again loses the lock. */
  private @Nullable FileTime time() {
    try {
      return Files.getLastModifiedTime(directory.resolve(NAME));
    } catch (IOException e) {
      return null;
    }
  }

  /**
   * Takes the lock at once, or not at all.
   *
   * @throws ArchiveException if another daemon has it: who, and since when
   */
  static DaemonLock take(Path results, LockHolder taker) throws IOException, ArchiveException {
    Path directory = results.toRealPath();
    @Nullable LockHolder holder = HELD_HERE.putIfAbsent(directory, taker);
    if (holder != null) {
      throw taken(results, Optional.of(holder));
    }
    try {
      return take(results, directory, taker);
    } catch (IOException | ArchiveException | RuntimeException e) {
      HELD_HERE.remove(directory);
      throw e;
    }
  }

  private static DaemonLock take(Path results, Path directory, LockHolder taker)
      throws IOException, ArchiveException {
    LockFile file = LockFile.open(directory.resolve(NAME));
    try {
      if (!file.tryLock(results)) {
        throw taken(results, file.holder());
      }
      String note = file.marked() ? note(file.holder()) : "";
      file.mark(taker);
      return new DaemonLock(directory, file, note);
    } catch (IOException | ArchiveException | RuntimeException e) {
      file.close();
      throw e;
    }
  }

  /** What the daemon before left, in a line; empty when it ended in order. */
  String note() {
    return note;
  }

  @Override
  public void close() throws IOException {
    if (closed.getAndSet(true)) {
      return;
    }
    try (LockFile closing = file) {
      closing.clear();
    } finally {
      HELD_HERE.remove(directory);
    }
  }

  private static String note(Optional<LockHolder> before) {
    return "the last watch here"
        + before.map(h -> " (" + h + ")").orElse("")
        + " did not end in order; looking for what it left";
  }

  private static ArchiveException taken(Path results, Optional<LockHolder> holder) {
    return new ArchiveException(
        "another watch"
            + holder.map(h -> " (" + h + ")").orElse("")
            + " is using "
            + results
            + "; stop it, or choose another --results directory");
  }
}
