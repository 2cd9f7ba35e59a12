package org.thumbseal.archive;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.channels.FileChannel;
import java.nio.channels.OverlappingFileLockException;
import java.nio.charset.StandardCharsets;
import java.nio.file.LinkOption;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.util.Optional;

/**
 * A file that is locked against other processes and says who holds it. The operating system lets go
 * when the process ends, however it ends, so no lock is ever stale; what stands in a file that
 * nobody holds was left by a process that did not end in order.
 *
 * <p>On POSIX systems a process loses its lock as soon as it closes the file through any channel:
 * one process must have it open once at a time.
 */
final class LockFile implements AutoCloseable {
  /**
   * Far beyond the content: Windows keeps others from reading what is locked, and they have to be
   * able to read who holds it.
   */
  private static final long LOCKED_BYTE = 1L << 30;

  private static final int LONGEST = 64;

  private final FileChannel channel;

  private LockFile(FileChannel channel) {
    this.channel = channel;
  }

  static LockFile open(Path file) throws IOException {
    return new LockFile(
        FileChannel.open(
            file,
            StandardOpenOption.CREATE,
            StandardOpenOption.READ,
            StandardOpenOption.WRITE,
            // A link in its place would have somebody else's file emptied.
            LinkOption.NOFOLLOW_LINKS));
  }

  /** Whether the lock is had now; another process may have it. */
  boolean tryLock(Path directory) throws ArchiveException {
    return tryLock(directory, () -> channel.tryLock(LOCKED_BYTE, 1, false) != null);
  }

  static boolean tryLock(Path directory, Attempt attempt) throws ArchiveException {
    try {
      return attempt.succeeds();
    } catch (OverlappingFileLockException e) {
      return false;
    } catch (IOException e) {
      throw new ArchiveException(
          directory
              + ": files cannot be locked there ("
              + e.getMessage()
              + "); choose a --results directory on another disk");
    }
  }

  /** Whether somebody left something in it. */
  boolean marked() throws IOException {
    return channel.size() > 0;
  }

  /** Who wrote the mark, as far as it can be read. */
  Optional<LockHolder> holder() throws IOException {
    ByteBuffer content = ByteBuffer.allocate(LONGEST);
    channel.read(content, 0);
    return LockHolder.read(
        new String(content.array(), 0, content.position(), StandardCharsets.US_ASCII));
  }

  void mark(LockHolder holder) throws IOException {
    channel.truncate(0);
    channel.write(ByteBuffer.wrap(holder.line().getBytes(StandardCharsets.US_ASCII)), 0);
    channel.force(false);
  }

  void clear() throws IOException {
    channel.truncate(0);
  }

  /** Lets go of the lock, whatever stands in the file. */
  @Override
  public void close() throws IOException {
    channel.close();
  }

  /** One try for the lock. */
  @FunctionalInterface
  interface Attempt {
    boolean succeeds() throws IOException;
  }
}
