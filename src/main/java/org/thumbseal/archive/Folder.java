package org.thumbseal.archive;

import java.io.IOException;
import java.nio.file.DirectoryIteratorException;
import java.nio.file.DirectoryStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.function.Consumer;
import java.util.function.Predicate;

/**
 * A folder in which documents lie.
 *
 * @param path the folder
 * @param documents names of what is named as documents are, whatever it is, sorted
 */
record Folder(Path path, List<String> documents) {
  /** Reads the names in a folder, and keeps those that this is true of. */
  static Folder read(Path path, Predicate<Path> isDocument) throws IOException {
    List<String> names = new ArrayList<>();
    forEachName(
        path,
        name -> {
          if (isDocument.test(path.resolve(name))) {
            names.add(name);
          }
        });
    names.sort(Comparator.naturalOrder());
    return new Folder(path, names);
  }

  /** Shows the name of everything in a folder, in no order. */
  static void forEachName(Path folder, Consumer<String> visitor) throws IOException {
    try (DirectoryStream<Path> entries = Files.newDirectoryStream(folder)) {
      entries.forEach(entry -> visitor.accept(entry.getFileName().toString()));
    } catch (DirectoryIteratorException e) {
      throw e.getCause();
    }
  }

  /** Such names are for the program's own unfinished work, and for what other programs leave. */
  static boolean isHidden(String name) {
    return name.startsWith(".");
  }
}
