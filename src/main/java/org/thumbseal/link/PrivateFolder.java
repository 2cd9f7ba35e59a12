package org.thumbseal.link;

import java.io.IOException;
import java.nio.file.FileSystems;
import java.nio.file.FileVisitResult;
import java.nio.file.Files;
import java.nio.file.InvalidPathException;
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
 * gone again with all that is in it when closed; a loaded library stays usable without its file,
 * but on Windows, where {@link LeftFolders} takes it away at a later start.
 */
public record PrivateFolder(Path path) implements AutoCloseable {
  static final String PREFIX = "thumbseal-native-";

  private static final boolean POSIX =
      FileSystems.getDefault().supportedFileAttributeViews().contains("posix");

  /** One in the temporary folder and one in the user's home, for one may forbid execution. */
  public static List<PrivateFolder> wherePossible() {
    return Stream.of("java.io.tmpdir", "user.home")
        .map(property -> System.getProperty(property, ""))
        .filter(text -> !text.isEmpty())
        .map(PrivateFolder::in)
        .flatMap(Optional::stream)
        .toList();
  }

  /** Empty where none can be made. */
  static Optional<PrivateFolder> in(String parent) {
    try {
      return Optional.of(
          new PrivateFolder(
              Files.createTempDirectory(Path.of(parent), PREFIX, rights("rwx------"))));
    } catch (IOException | InvalidPathException e) {
      return Optional.empty();
    }
  }

  /** Writes a new file that only the owner can read and execute, and folders above it as needed. */
  public Path write(String name, byte[] content) throws IOException {
    Path file = path.resolve(name);
    Files.createDirectories(file.getParent(), rights("rwx------"));
    Files.createFile(file, rights("rwx------"));
    Files.write(file, content);
    if (POSIX) {
      Files.setPosixFilePermissions(file, PosixFilePermissions.fromString("r-x------"));
    }
    return file;
  }

  private static FileAttribute<?>[] rights(String rights) {
    return POSIX
        ? new FileAttribute<?>[] {
          PosixFilePermissions.asFileAttribute(PosixFilePermissions.fromString(rights))
        }
        : new FileAttribute<?>[0];
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
