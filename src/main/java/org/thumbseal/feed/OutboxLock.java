package org.thumbseal.feed;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.channels.FileChannel;
import java.nio.channels.FileLock;
import java.nio.charset.StandardCharsets;
import java.nio.file.LinkOption;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.util.Optional;
import java.util.Set;
import java.util.concurrent.ConcurrentHashMap;
import org.jspecify.annotations.Nullable;

/**
 * Held while a program sends from an outbox, so that a second one does not send the same. The
 * operating system lets go of it when the process ends, however it ends.
 */
final class OutboxLock implements AutoCloseable {
  /** The system does not tell the threads of one process apart. */
  private static final Set<Path> HELD_HERE = ConcurrentHashMap.newKeySet();

  /** Far beyond the content, which others have to be able to read on Windows too. */
  private static final long LOCKED_BYTE = 1L << 30;

  private static final int LONGEST = 20;

  private final Path file;
  private final FileChannel channel;

  private OutboxLock(Path file, FileChannel channel) {
    this.file = file;
    this.channel = channel;
  }

  /**
   * Takes it at once, or not at all.
   *
   * @throws FeedException if another program has it, or the file cannot be made
   */
  static OutboxLock take(Path record) throws FeedException {
    Path file = record.resolveSibling(record.getFileName() + ".lock").toAbsolutePath().normalize();
    if (!HELD_HERE.add(file)) {
      throw taken(Optional.of(ProcessHandle.current().pid()));
    }
    try {
      return opened(file);
    } catch (IOException e) {
      HELD_HERE.remove(file);
      throw FeedException.machine(
          file + ": cannot be made: " + e.getMessage() + "; name another folder with --outbox");
    } catch (FeedException | RuntimeException e) {
      HELD_HERE.remove(file);
      throw e;
    }
  }

  private static OutboxLock opened(Path file) throws IOException, FeedException {
    FileChannel channel =
        FileChannel.open(
            file,
            StandardOpenOption.CREATE,
            StandardOpenOption.READ,
            StandardOpenOption.WRITE,
            LinkOption.NOFOLLOW_LINKS);
    try {
      @Nullable FileLock lock = channel.tryLock(LOCKED_BYTE, 1, false);
      if (lock == null) {
        throw taken(holder(channel));
      }
      mark(channel);
      return new OutboxLock(file, channel);
    } catch (IOException | FeedException | RuntimeException e) {
      channel.close();
      throw e;
    }
  }

  /** Says who has it; on a full disk it is held without a word. */
  private static void mark(FileChannel channel) {
    String process = Long.toString(ProcessHandle.current().pid());
    try {
      channel.truncate(0);
      channel.write(ByteBuffer.wrap(process.getBytes(StandardCharsets.US_ASCII)), 0);
    } catch (IOException e) {
      // It is held all the same.
    }
  }

  private static Optional<Long> holder(FileChannel channel) throws IOException {
    ByteBuffer content = ByteBuffer.allocate(LONGEST);
    channel.read(content, 0);
    String text = new String(content.array(), 0, content.position(), StandardCharsets.US_ASCII);
    return text.matches("[0-9]{1,18}") ? Optional.of(Long.parseLong(text)) : Optional.empty();
  }

  private static FeedException taken(Optional<Long> process) {
    return FeedException.machine(
        "another thumbseal"
            + process.map(p -> " (process " + p + ")").orElse("")
            + " sends these results there already; stop it, or leave it to that one");
  }

  @Override
  public void close() throws IOException {
    try {
      channel.close();
    } finally {
      HELD_HERE.remove(file);
    }
  }
}
