package org.thumbseal.archive;

import java.io.IOException;
import java.nio.file.DirectoryIteratorException;
import java.nio.file.DirectoryStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.HashMap;
import java.util.HashSet;
import java.util.Map;
import java.util.Set;

/**
 * The beginnings of all ids stored in a folder, so that a new one is known for new without listing
 * thousands of files each time. Right as long as no other process writes; to be forgotten when one
 * has.
 */
final class StoredMarks {
  private final Map<Path, Set<String>> folders = new HashMap<>();

  boolean contains(Path folder, String mark) throws IOException {
    return of(folder).contains(mark);
  }

  void add(Path folder, String mark) throws IOException {
    of(folder).add(mark);
  }

  void forget() {
    folders.clear();
  }

  private Set<String> of(Path folder) throws IOException {
    Set<String> known = folders.get(folder);
    if (known == null) {
      known = read(folder);
      folders.put(folder, known);
    }
    return known;
  }

  private static Set<String> read(Path folder) throws IOException {
    Set<String> marks = new HashSet<>();
    if (Files.isDirectory(folder)) {
      try (DirectoryStream<Path> files =
          Files.newDirectoryStream(folder, "*" + ResultName.DOCUMENT)) {
        files.forEach(file -> marks.add(ResultName.mark(file.getFileName().toString())));
      } catch (DirectoryIteratorException e) {
        throw e.getCause();
      }
    }
    return marks;
  }
}
