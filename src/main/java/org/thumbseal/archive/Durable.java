package org.thumbseal.archive;

import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;
import java.nio.channels.Channels;
import java.nio.channels.FileChannel;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.nio.file.StandardOpenOption;
import org.thumbseal.seal.Sha256;

/**
 * Files that are there whole or not at all, even when the power goes: written under a temporary
 * name in the same folder, forced to the disk, renamed, and the folder forced too.
 */
public final class Durable {
  private static final String PREFIX = ".";
  private static final String SUFFIX = ".tmp";

  private Durable() {}

  static boolean isTemporary(Path file) {
    String name = file.getFileName().toString();
    return name.startsWith(PREFIX) && name.endsWith(SUFFIX);
  }

  static Path temporary(Path target) {
    return target.resolveSibling(PREFIX + target.getFileName() + SUFFIX);
  }

  /**
   * Copies the stream to a new file, forces it to the disk and gives the digest of what was
   * written.
   */
  static String write(Path file, InputStream in) throws IOException {
    // What bears the name may be a link to somebody's file: it is taken away, never written
    // through.
    Files.deleteIfExists(file);
    try (FileChannel channel =
        FileChannel.open(file, StandardOpenOption.CREATE_NEW, StandardOpenOption.WRITE)) {
      OutputStream out = Channels.newOutputStream(channel);
      String digest = Sha256.copy(in, out);
      channel.force(true);
      return digest;
    } catch (IOException e) {
      // On a full disk half a file would only take the room of a whole one.
      Files.deleteIfExists(file);
      throw e;
    }
  }

  /** Removes a temporary file if that can be done; else the next start does. */
  static void tidyAway(Path temporary) {
    try {
      Files.deleteIfExists(temporary);
    } catch (IOException e) {
      // Whether what was written is there does not hang on this.
    }
  }

  /** Writes the line and LF to a file and forces it to the disk. */
  static void write(Path file, String line) throws IOException {
    byte[] bytes = (line + "\n").getBytes(StandardCharsets.UTF_8);
    write(file, new java.io.ByteArrayInputStream(bytes));
  }

  /** Puts the line and LF in the place of a file, or makes it: the old one or the new is there. */
  public static void replace(Path file, String line) throws IOException {
    Path temporary = temporary(file);
    write(temporary, line);
    rename(temporary, file);
  }

  /** Puts the new file in the place of the old one, if there is one, in one step. */
  static void rename(Path from, Path to) throws IOException {
    Files.move(from, to, StandardCopyOption.ATOMIC_MOVE);
  }

  /** Makes sure that names in this folder outlive a power cut. */
  static void forceFolder(Path folder) throws IOException {
    try (FileChannel channel = FileChannel.open(folder, StandardOpenOption.READ)) {
      channel.force(true);
    } catch (IOException e) {
      // Windows opens no folder as a file, and keeps names in its own journal.
      if (!System.getProperty("os.name", "").startsWith("Windows")) {
        throw e;
      }
    }
  }
}
