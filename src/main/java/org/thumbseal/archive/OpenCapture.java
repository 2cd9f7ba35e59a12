package org.thumbseal.archive;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.channels.FileChannel;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.util.Optional;
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
  private @Nullable Path file;
  private @Nullable FileChannel channel;

  OpenCapture(Path folder, String stem) {
    this.folder = folder;
    this.stem = stem;
  }

  /** Where it is, once {@link #rewrite} has begun it. */
  public Optional<Path> file() {
    return Optional.ofNullable(file);
  }

  /**
   * Puts a whole capture in the place of what was there, in one step, and on the disk for good.
   *
   * @throws ArchiveException if that fails; what was there is there still
   */
  public void rewrite(byte[] capture) throws ArchiveException {
    try {
      close();
      Path target = file().orElseGet(this::free);
      replace(target, capture);
      file = target;
      Durable.forceFolder(folder);
    } catch (IOException e) {
      throw ArchiveException.of(folder, e);
    }
  }

  private void replace(Path target, byte[] capture) throws IOException {
    Path fresh = target.resolveSibling(target.getFileName() + FRESH);
    // What bears the name may be a link to somebody's file.
    Files.deleteIfExists(fresh);
    FileChannel begun =
        FileChannel.open(fresh, StandardOpenOption.CREATE_NEW, StandardOpenOption.WRITE);
    try {
      write(begun, capture);
      begun.force(true);
      Durable.rename(fresh, target);
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
    file = null;
    try {
      close();
    } catch (IOException e) {
      throw ArchiveException.of(folder, e);
    }
  }

  /** Removes the file: what was in it is stored, or of no use. */
  public void remove() throws ArchiveException {
    Path there = file;
    file = null;
    try {
      close();
      if (there != null) {
        Files.deleteIfExists(there);
      }
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

  /** What was left is never written over. */
  private Path free() {
    Path candidate = folder.resolve(stem + ResultName.CAPTURE);
    for (int number = 2; Files.exists(candidate); number++) {
      candidate = folder.resolve(stem + "-" + number + ResultName.CAPTURE);
    }
    return candidate;
  }
}
