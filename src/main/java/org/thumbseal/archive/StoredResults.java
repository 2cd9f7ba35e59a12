package org.thumbseal.archive;

import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;

/** The files of results in a directory. */
public final class StoredResults {
  private StoredResults() {}

  /**
   * All documents of a result directory, or of the folder of a year in it, that are not named as
   * corrections, calibrations, inspections and leak searches are; newest first, by the instant that
   * their names begin with. About 200 bytes of memory each.
   *
   * @throws ArchiveException if it cannot be read
   */
  public static List<Path> in(Path directory) throws ArchiveException {
    List<Path> files = new ArrayList<>();
    try {
      new ResultDirectory(directory)
          .forEachDocument(
              file -> {
                if (!ResultName.isOfNoTest(file)) {
                  files.add(file);
                }
              });
    } catch (IOException e) {
      throw new ArchiveException(directory + ": " + ArchiveException.reading(e));
    }
    files.sort(Comparator.comparing((Path file) -> file.getFileName().toString()).reversed());
    return files;
  }
}
