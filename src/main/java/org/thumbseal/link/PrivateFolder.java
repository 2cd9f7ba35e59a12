package org.thumbseal.link;

import java.io.IOException;
import java.nio.file.FileVisitResult;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.SimpleFileVisitor;
import java.nio.file.attribute.BasicFileAttributes;
import java.nio.file.attribute.FileAttribute;
import java.nio.file.attribute.PosixFilePermissions;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;

/**
 * A fresh folder of a name nobody can guess, made with owner-only permissions from the start, and
 * gone again with all that is in it when closed; a loaded library stays usable without its file.
 */
record PrivateFolder(Path path) implements AutoCloseable {
  private static final String PREFIX = "thumbseal-native-";

  /** One in the temporary folder and one in the user's home, for one may forbid execution. */
  static List<PrivateFolder> wherePossible() {
    return Stream.of("java.io.tmpdir", "user.home")
        .map(property -> System.getProperty(property, ""))
        .filter(text -> !text.isEmpty())
        .map(text -> in(Path.of(text)))
        .flatMap(Optional::stream)
        .toList();
  }

  /** Empty where none can be made. */
  static Optional<PrivateFolder> in(Path parent) {
    FileAttribute<?> ownerOnly =
        PosixFilePermissions.asFileAttribute(PosixFilePermissions.fromString("rwx------"));
    try {
      return Optional.of(new PrivateFolder(Files.createTempDirectory(parent, PREFIX, ownerOnly)));
    } catch (IOException | UnsupportedOperationException e) {
      return Optional.empty();
    }
  }

  @Override
  public void close() {
    try {
      Files.walkFileTree(path, new Remover());
    } catch (IOException e) {
      path.toFile().deleteOnExit();
    }
  }

  private static final class Remover extends SimpleFileVisitor<Path> {
    @Override
    public FileVisitResult visitFile(Path file, BasicFileAttributes attributes) throws IOException {
      Files.delete(file);
      return FileVisitResult.CONTINUE;
    }

    @Override
    public FileVisitResult postVisitDirectory(Path folder, @Nullable IOException failure)
        throws IOException {
      Files.delete(folder);
      return FileVisitResult.CONTINUE;
    }
  }
}
