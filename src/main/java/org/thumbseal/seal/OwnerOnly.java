package org.thumbseal.seal;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.channels.FileChannel;
import java.nio.charset.StandardCharsets;
import java.nio.file.FileSystems;
import java.nio.file.Files;
import java.nio.file.LinkOption;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.nio.file.StandardOpenOption;
import java.nio.file.attribute.FileAttribute;
import java.nio.file.attribute.PosixFilePermission;
import java.nio.file.attribute.PosixFilePermissions;
import java.util.Set;

/**
 * Files and folders that their owner alone can read. Only POSIX file systems can be asked about it;
 * elsewhere the rights of the folder are the user's affair.
 */
final class OwnerOnly {
  private static final boolean POSIX =
      FileSystems.getDefault().supportedFileAttributeViews().contains("posix");

  private OwnerOnly() {}

  /** Makes the folder, and those above it that are missing, unless it is there. */
  static void createFolder(Path folder) throws IOException {
    Path parent = folder.getParent();
    if (parent != null) {
      Files.createDirectories(parent);
    }
    if (!Files.isDirectory(folder)) {
      Files.createDirectory(folder, attributes("rwx------"));
    }
  }

  /** Writes a new file and waits until it is on the disk. */
  static void write(Path file, String text) throws IOException {
    Set<StandardOpenOption> options =
        Set.of(StandardOpenOption.CREATE_NEW, StandardOpenOption.WRITE);
    try (FileChannel out = FileChannel.open(file, options, attributes("rw-------"))) {
      ByteBuffer bytes = ByteBuffer.wrap(text.getBytes(StandardCharsets.UTF_8));
      while (bytes.hasRemaining()) {
        out.write(bytes);
      }
      out.force(true);
    }
  }

  /** Opens a file to be written, a new one where there is none; never what a link leads to. */
  static FileChannel open(Path file) throws IOException {
    return FileChannel.open(
        file,
        Set.of(StandardOpenOption.CREATE, StandardOpenOption.WRITE, LinkOption.NOFOLLOW_LINKS),
        attributes("rw-------"));
  }

  /** Puts a file in the place of another, in one step that is on the disk at the end. */
  static void replace(Path file, Path place) throws IOException {
    Files.move(file, place, StandardCopyOption.ATOMIC_MOVE);
    if (POSIX) {
      try (FileChannel folder = FileChannel.open(KeyStore.folder(place), StandardOpenOption.READ)) {
        folder.force(true);
      }
    }
  }

  /**
   * Refuses a secret that others can read.
   *
   * @param what it is, for the message
   */
  static void require(Path file, String what) throws IOException, KeyException {
    requireFile(file, what);
    Path folder = file.toAbsolutePath().getParent();
    if (folder != null) {
      requireFolder(folder);
    }
  }

  /** The same, wherever it lies: of what is kept in a common folder for settings. */
  static void requireFile(Path file, String what) throws IOException, KeyException {
    if (openToOthers(file)) {
      throw new KeyException("others can read this " + what + "; run: chmod 600 " + file);
    }
  }

  static void requireFolder(Path folder) throws IOException, KeyException {
    if (openToOthers(folder)) {
      throw new KeyException(
          "others can enter its folder; keep it in one of its own, or run: chmod 700 " + folder);
    }
  }

  private static boolean openToOthers(Path path) throws IOException {
    if (!POSIX) {
      return false;
    }
    Set<PosixFilePermission> rights = Files.getPosixFilePermissions(path);
    return rights.stream().anyMatch(p -> !p.name().startsWith("OWNER_"));
  }

  private static FileAttribute<?>[] attributes(String rights) {
    return POSIX
        ? new FileAttribute<?>[] {
          PosixFilePermissions.asFileAttribute(PosixFilePermissions.fromString(rights))
        }
        : new FileAttribute<?>[0];
  }
}
