package org.thumbseal.archive;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.channels.FileChannel;
import java.nio.channels.FileLock;
import java.nio.channels.OverlappingFileLockException;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import org.jspecify.annotations.Nullable;

/**
 * Keeps a second writer out of a result directory. The operating system lets go of the lock when
 * the process ends, however it ends, so none is ever stale. The file also tells whether a write was
 * under way when that happened.
 */
final class DirectoryLock implements AutoCloseable {
  static final String NAME = ".lock";

  private final FileChannel channel;

  private DirectoryLock(FileChannel channel) {
    this.channel = channel;
  }

  static DirectoryLock take(Path directory) throws IOException, ArchiveException {
    FileChannel channel =
        FileChannel.open(
            directory.resolve(NAME),
            StandardOpenOption.CREATE,
            StandardOpenOption.READ,
            StandardOpenOption.WRITE);
    if (lock(channel) == null) {
      channel.close();
      throw new ArchiveException(
          "another thumbseal is writing to "
              + directory
              + "; stop it, or choose another --results directory");
    }
    return new DirectoryLock(channel);
  }

  private static @Nullable FileLock lock(FileChannel channel) throws IOException {
    try {
      return channel.tryLock();
    } catch (OverlappingFileLockException e) {
      return null;
    }
  }

  /** Whether a write was begun and not ended. */
  boolean writing() throws IOException {
    return channel.size() > 0;
  }

  void begin() throws IOException {
    channel.write(ByteBuffer.wrap(new byte[] {'w', '\n'}), 0);
    channel.force(false);
  }

  void end() throws IOException {
    channel.truncate(0);
  }

  @Override
  public void close() throws IOException {
    channel.close();
  }
}
