package org.thumbseal.archive;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.concurrent.TimeUnit;
import java.util.function.Consumer;

/** Which documents lie in a result directory, by name, without opening one. */
public final class StoredFolders {
  private final ResultDirectory directory;

  /** Of this directory. */
  public StoredFolders(Path results) {
    this.directory = new ResultDirectory(results);
  }

  /**
   * The folders in which documents may lie, sorted: the directory itself and those in it.
   *
   * @throws ArchiveException if it cannot be read
   */
  public List<Path> folders() throws ArchiveException {
    try {
      return directory.folders();
    } catch (IOException e) {
      throw unreadable(directory.path(), e);
    }
  }

  /**
   * Shows the names of all documents in one of the folders, in no order.
   *
   * @throws ArchiveException if it cannot be read
   */
  public void forEachName(Path folder, Consumer<String> visitor) throws ArchiveException {
    try {
      Folder.forEachName(
          folder,
          name -> {
            if (directory.isDocument(folder.resolve(name))) {
              visitor.accept(name);
            }
          });
    } catch (IOException e) {
      throw unreadable(folder, e);
    }
  }

  /**
   * When a name last came into a folder or left it, in nanoseconds of the disk's clock; it may be
   * coarse.
   *
   * @throws ArchiveException if it cannot be read
   */
  public static long changed(Path folder) throws ArchiveException {
    try {
      return Files.getLastModifiedTime(folder).to(TimeUnit.NANOSECONDS);
    } catch (IOException e) {
      throw unreadable(folder, e);
    }
  }

  /**
   * What the head says, as it stands there; empty where there is none.
   *
   * @throws ArchiveException if it cannot be read
   */
  public String head() throws ArchiveException {
    try {
      return directory.hasHead() ? Files.readString(directory.headFile()) : "";
    } catch (IOException e) {
      throw unreadable(directory.headFile(), e);
    }
  }

  private static ArchiveException unreadable(Path path, IOException cause) {
    return new ArchiveException(path + ": " + ArchiveException.reading(cause));
  }
}
