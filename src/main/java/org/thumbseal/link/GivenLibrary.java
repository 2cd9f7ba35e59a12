package org.thumbseal.link;

import java.io.File;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.InvalidPathException;
import java.nio.file.Path;
import java.nio.file.attribute.PosixFilePermission;
import java.util.Arrays;
import java.util.List;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;

/**
 * Native files that lie on this machine already and that the serial library would load: those in a
 * folder the user names ({@code jSerialComm.library.path}), and those where Java looks for native
 * libraries ({@code java.library.path}). Each has to be one of the table and out of reach of other
 * users, unless the user says that another is meant; they are loaded from where they are, for no
 * other place may permit it.
 */
final class GivenLibrary {
  /** Set to {@code true} by who has built the library for a machine of their own. */
  static final String UNCHECKED = "thumbseal.library.unchecked";

  private final LibraryTable table;
  private final String system;

  GivenLibrary(LibraryTable table, String system) {
    this.table = table;
    this.system = system;
  }

  /**
   * The folder the user names, with the first of its files.
   *
   * @throws LibraryRefused if it holds none, or one that is not in the table
   */
  LibraryPlace in(String named) throws LibraryRefused {
    List<Path> files = files(named);
    if (files.isEmpty()) {
      throw new LibraryRefused(
          named
              + ": there is no serial library for this machine in the folder that"
              + " -DjSerialComm.library.path names; unpack it there from the jSerialComm jar");
    }
    require(files);
    return new LibraryPlace(Path.of(named), files.get(0));
  }

  /** Looks at what Java would find by the bare name, for that is loaded on top of any other. */
  void requireOn(String libraryPath) throws LibraryRefused {
    require(
        Arrays.stream(libraryPath.split(File.pathSeparator, -1))
            .map(text -> text.isEmpty() ? "." : text)
            .flatMap(folder -> found(folder, LibrarySystem.fileNames(system)))
            .toList());
  }

  private List<Path> files(String folder) {
    return found(
            folder,
            Stream.concat(table.names(system).stream(), LibrarySystem.fileNames(system)).distinct())
        .toList();
  }

  private static Stream<Path> found(String folder, Stream<String> names) {
    try {
      Path path = Path.of(folder);
      return names.map(path::resolve).filter(Files::exists);
    } catch (InvalidPathException e) {
      return Stream.empty();
    }
  }

  private void require(List<Path> files) throws LibraryRefused {
    if (Boolean.getBoolean(UNCHECKED)) {
      return;
    }
    for (Path file : files) {
      if (openToAll(file) || openToAll(file.toAbsolutePath().getParent())) {
        throw new LibraryRefused(
            file + " is not loaded: anybody on this machine can exchange it; take that right away");
      }
      if (!known(file)) {
        throw new LibraryRefused(
            file
                + " is not the serial library this program was built with, and is not loaded; take it"
                + " away, or start Java with -D"
                + UNCHECKED
                + "=true if you have built it yourself");
      }
    }
  }

  private static boolean openToAll(@Nullable Path path) {
    try {
      return path != null
          && Files.getPosixFilePermissions(path).contains(PosixFilePermission.OTHERS_WRITE);
    } catch (IOException | UnsupportedOperationException e) {
      return false;
    }
  }

  private boolean known(Path file) {
    try {
      return Files.isRegularFile(file) && table.holds(Files.readAllBytes(file));
    } catch (IOException e) {
      return false;
    }
  }
}
