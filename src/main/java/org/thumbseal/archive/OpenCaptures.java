package org.thumbseal.archive;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.util.List;
import java.util.stream.Stream;
import org.thumbseal.seal.Sha256;

/**
 * The captures under way in a result directory, in a folder of their own. Belongs to whoever holds
 * the archive: files that are there at the start were left by a process that was interrupted.
 */
public final class OpenCaptures {
  private static final String FOLDER = "open";
  private static final int LONGEST_PORT = 40;
  private static final int DIGITS = 8;
  private static final int PROBE = 1 << 16;

  private final Path results;
  private final Path folder;
  private final Aside aside;

  OpenCaptures(Path results) {
    this.results = results;
    this.folder = results.resolve(FOLDER);
    this.aside = new Aside(results);
  }

  /**
   * Makes the folder. Only at the start: later on, a directory in which it is missing is another
   * one, such as the mount point of a disk that was pulled.
   *
   * @throws ArchiveException if it cannot be made
   */
  public void prepare() throws ArchiveException {
    try {
      if (!Files.isDirectory(folder)) {
        Files.createDirectory(folder);
        Durable.forceFolder(results);
      }
    } catch (IOException e) {
      throw ArchiveException.of(folder, e);
    }
  }

  /** A capture from this port; nothing is written yet. */
  public OpenCapture of(String port) {
    String mark = Sha256.hex(port.getBytes(StandardCharsets.UTF_8)).substring(0, DIGITS);
    return new OpenCapture(folder, ResultName.safe(port, LONGEST_PORT, "port") + "_" + mark);
  }

  /**
   * All files in the folder, in the order of their names.
   *
   * @throws ArchiveException if it cannot be read
   */
  public List<Path> left() throws ArchiveException {
    try (Stream<Path> all = Files.list(folder)) {
      return all.sorted().toList();
    } catch (UncheckedIOException e) {
      throw ArchiveException.of(folder, new IOException(e.getMessage(), e));
    } catch (IOException e) {
      throw ArchiveException.of(folder, e);
    }
  }

  /** Whether a file was about to take the place of another, which is there as it was. */
  public static boolean isUnfinished(Path file) {
    return file.getFileName().toString().endsWith(OpenCapture.FRESH);
  }

  /**
   * Moves a file as it is to where it is out of the way.
   *
   * @return where it is now
   * @throws ArchiveException if it cannot be moved
   */
  public Path setAside(Path file) throws ArchiveException {
    try {
      return aside.move(file);
    } catch (IOException e) {
      throw ArchiveException.of(file, e);
    }
  }

  /**
   * The same with another content. Cut short at any point, it can be done again.
   *
   * @param time of its beginning, for the name
   * @param content what it is to hold there
   * @return where it is now
   * @throws ArchiveException if it cannot be written; the file is where it was
   */
  public Path setAside(Path file, String time, byte[] content) throws ArchiveException {
    try {
      String day = ResultName.safe(time, LONGEST_PORT, "undated");
      Path target = aside.write(day + "_" + file.getFileName(), content);
      Files.delete(file);
      return target;
    } catch (IOException e) {
      throw ArchiveException.of(file, e);
    }
  }

  /**
   * Removes a file whose content is stored, or of no use.
   *
   * @throws ArchiveException if it cannot be removed
   */
  public void remove(Path file) throws ArchiveException {
    try {
      Files.deleteIfExists(file);
    } catch (IOException e) {
      throw ArchiveException.of(file, e);
    }
  }

  /**
   * Finds out whether anything can be written.
   *
   * @throws ArchiveException if not
   */
  public void probe() throws ArchiveException {
    Path file = folder.resolve("probe" + OpenCapture.FRESH);
    try {
      try {
        Files.deleteIfExists(file);
        Files.write(file, new byte[PROBE], StandardOpenOption.CREATE_NEW);
      } finally {
        Files.deleteIfExists(file);
      }
    } catch (IOException e) {
      throw ArchiveException.of(folder, e);
    }
  }

  /**
   * Removes the folder if nothing is left in it.
   *
   * @throws ArchiveException if it cannot be removed
   */
  public void close() throws ArchiveException {
    if (Files.isDirectory(folder) && left().isEmpty()) {
      remove(folder);
    }
  }
}
