package org.thumbseal.archive;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.LinkOption;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.atomic.AtomicLong;
import java.util.function.Consumer;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;
import org.thumbseal.json.JsonGate;
import org.thumbseal.json.JsonRefusedException;
import tools.jackson.databind.node.ObjectNode;

/**
 * The files of a result directory, for reading.
 *
 * @param path the directory that holds {@code head.json} and the folders of the years
 */
record ResultDirectory(Path path) {
  static final String HEAD = "head.json";
  private static final int DEPTH = 2;

  Path headFile() {
    return path.resolve(HEAD);
  }

  boolean hasHead() {
    return Files.exists(headFile());
  }

  ObjectNode head() throws JsonRefusedException {
    return JsonGate.read(headFile());
  }

  /** The directory in which this document lies, when it lies in the folder of a year there. */
  static Optional<ResultDirectory> around(Path document) {
    Path folder = document.toAbsolutePath().normalize().getParent();
    return Stream.iterate(folder, f -> f != null, Path::getParent)
        .limit(DEPTH)
        .map(ResultDirectory::new)
        .filter(ResultDirectory::hasHead)
        .findFirst();
  }

  /** Shows every document in it, in no order, one at a time. */
  void forEachDocument(Consumer<Path> visitor) throws IOException {
    forEachFile(
        file -> {
          if (isDocument(file)) {
            visitor.accept(file);
          }
        });
  }

  long countDocuments() throws IOException {
    AtomicLong count = new AtomicLong();
    forEachDocument(file -> count.incrementAndGet());
    return count.get();
  }

  /** Files that a write left behind under a temporary name. */
  List<Path> temporaryFiles() throws IOException {
    List<Path> found = new ArrayList<>();
    forEachFile(
        file -> {
          if (Durable.isTemporary(file) && isOwn(file.getParent())) {
            found.add(file);
          }
        });
    return found;
  }

  /** The path as {@code head.json} names it. */
  String relative(Path document) {
    return path.relativize(document).toString().replace('\\', '/');
  }

  /** The folder of a document that {@code head.json} names. */
  Path folderOf(String relative) {
    Path folder = path.resolve(relative).getParent();
    return folder == null ? path : folder;
  }

  /**
   * The folders in which documents may lie, sorted: the directory itself and those in it. They may
   * be links, to another disk as it were; what lies in them may not.
   */
  List<Path> folders() throws IOException {
    List<Path> folders = new ArrayList<>(List.of(path));
    Folder.forEachName(
        path,
        name -> {
          if (!Folder.isHidden(name) && Files.isDirectory(path.resolve(name))) {
            folders.add(path.resolve(name));
          }
        });
    folders.sort(Comparator.naturalOrder());
    return folders;
  }

  private void forEachFile(Consumer<Path> visitor) throws IOException {
    for (Path folder : folders()) {
      Folder.forEachName(
          folder,
          name -> {
            if (Files.isRegularFile(folder.resolve(name), LinkOption.NOFOLLOW_LINKS)) {
              visitor.accept(folder.resolve(name));
            }
          });
    }
  }

  /** What lies behind a linked folder may be somebody else's, and is not for us to remove. */
  private boolean isOwn(@Nullable Path folder) {
    return folder == null || folder.equals(path) || !Files.isSymbolicLink(folder);
  }

  /** The documents by name of one of the {@link #folders}. */
  Folder read(Path folder) throws IOException {
    return Folder.read(folder, this::isDocument);
  }

  boolean isDocument(Path file) {
    String name = file.getFileName().toString();
    return name.endsWith(ResultName.DOCUMENT) && !Folder.isHidden(name) && !file.equals(headFile());
  }
}
