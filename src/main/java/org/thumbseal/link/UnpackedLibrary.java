package org.thumbseal.link;

import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.Predicate;

/**
 * The native files of this operating system, taken out of the program, checked against the table
 * and laid into a private folder. All of the system are, for only loading tells which one fits the
 * processor: the serial library tries them in turn, and takes none that is not there.
 */
final class UnpackedLibrary {
  private final LibraryTable table;
  private final String system;
  private final Predicate<Path> executable;

  /** The predicate tells whether a file may be executed where it lies. */
  UnpackedLibrary(LibraryTable table, String system, Predicate<Path> executable) {
    this.table = table;
    this.system = system;
    this.executable = executable;
  }

  /**
   * Unpacked into the first of these folders that permits it and lets files be executed; the others
   * stay empty.
   *
   * @throws LibraryRefused if the program's own file is not what it was built with
   */
  Optional<LibraryPlace> into(List<PrivateFolder> folders) throws LibraryRefused {
    for (PrivateFolder folder : folders) {
      Optional<LibraryPlace> place = into(folder);
      if (place.isPresent()) {
        return place;
      }
    }
    return Optional.empty();
  }

  private Optional<LibraryPlace> into(PrivateFolder folder) throws LibraryRefused {
    try {
      List<Path> files = new ArrayList<>();
      for (String name : table.names(system)) {
        files.add(folder.write(name, content(name)));
      }
      return files.stream()
          .findFirst()
          .filter(executable)
          .map(file -> new LibraryPlace(folder.path(), file));
    } catch (IOException e) {
      // A full or failing disk: the next folder may lie on another.
      return Optional.empty();
    }
  }

  private byte[] content(String name) throws LibraryRefused, IOException {
    try (InputStream in = UnpackedLibrary.class.getResourceAsStream("/" + name)) {
      byte[] content = in == null ? new byte[0] : in.readAllBytes();
      if (!table.holds(name, content)) {
        throw new LibraryRefused(
            "the serial library inside this program ("
                + name
                + ") is not the one it was built with, and is not loaded; get the program anew from"
                + " where you trust it");
      }
      return content;
    }
  }

  /** Whether files there may be executed: Linux answers no where it is mounted noexec. */
  static boolean executable(Path file) {
    return Files.isExecutable(file);
  }
}
