package org.thumbseal.archive;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.channels.FileChannel;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import org.jspecify.annotations.Nullable;

/**
 * The file of a capture that is still growing. It is a readable capture up to its last whole line
 * at any moment, whatever interrupts the writing. Not for several threads at once.
 */
public final class OpenCapture {
  /** Ending of a file that is about to take the place of another. */
  static final String FRESH = ".new";

  private final Path folder;
  private final String stem;
  private int number;
  private Path file;
  private @Nullable FileChannel channel;

  OpenCapture(Path folder, String stem) {
    this.folder = folder;
    this.stem = stem;
    this.file = next();
  }

  /** Where it is, or will be with the first {@link #rewrite}. */
  public Path file() {
    return file;
  }

  /**
   * Puts a whole capture in the place of what was there, in one step, and on the disk for good.
   *
   * @throws ArchiveException if that fails; what was there is there still
   */
  public void rewrite(byte[] capture) throws ArchiveException {
    Path fresh = file.resolveSibling(file.getFileName() + FRESH);
    try {
      close();
      replaceBy(fresh, capture);
      Durable.forceFolder(folder);
    } catch (IOException e) {
      throw ArchiveException.of(folder, e);
    }
  }

  private void replaceBy(Path fresh, byte[] capture) throws IOException {
    FileChannel begun =
        FileChannel.open(
            fresh,
            StandardOpenOption.CREATE,
            StandardOpenOption.TRUNCATE_EXISTING,
            StandardOpenOption.WRITE);
    try {
      write(begun, capture);
      begun.force(true);
      Durable.rename(fresh, file);
      channel = begun;
    } finally {
      if (channel != begun) {
        begun.close();
        Files.deleteIfExists(fresh);
      }
    }
  }

  /**
   * Gives lines at the end to the operating system: they outlive this process.
   *
   * @throws ArchiveException if some may not be there: write it anew
   */
  public void append(byte[] lines) throws ArchiveException {
    try {
      write(opened(), lines);
    } catch (IOException e) {
      throw ArchiveException.of(folder, e);
    }
  }

  /**
   * Makes sure that what was appended outlives a power cut.
   *
   * @throws ArchiveException if it may not
   */
  public void force() throws ArchiveException {
    try {
      opened().force(false);
    } catch (IOException e) {
      throw ArchiveException.of(folder, e);
    }
  }

  /** Leaves the file as it is; the next {@link #rewrite} begins another. */
  public void leave() throws ArchiveException {
    file = next();
    try {
      close();
    } catch (IOException e) {
      throw ArchiveException.of(folder, e);
    }
  }

  /** Removes the file: what was in it is stored, or of no use. */
  public void remove() throws ArchiveException {
    try {
      close();
      Files.deleteIfExists(file);
    } catch (IOException e) {
      throw ArchiveException.of(folder, e);
    }
  }

  private FileChannel opened() throws IOException {
    FileChannel open = channel;
    if (open == null) {
      throw new IOException("the open capture has not been begun");
    }
    return open;
  }

  private static void write(FileChannel channel, byte[] bytes) throws IOException {
    ByteBuffer buffer = ByteBuffer.wrap(bytes);
    while (buffer.hasRemaining()) {
      channel.write(buffer);
    }
  }

  private void close() throws IOException {
    FileChannel open = channel;
    channel = null;
    if (open != null) {
      open.close();
    }
  }

  /**
   * What an earlier one left, or this one, is never written over, even while it is not in sight.
   */
  private Path next() {
    Path candidate;
    do {
      number++;
      String suffix = number == 1 ? "" : "-" + number;
      candidate = folder.resolve(stem + suffix + ResultName.CAPTURE);
    } while (Files.exists(candidate));
    return candidate;
  }
}
