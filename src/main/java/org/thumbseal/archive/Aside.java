package org.thumbseal.archive;

import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import org.jspecify.annotations.Nullable;

/** The folder of a result directory for what no result could be made of; nothing leaves it. */
final class Aside {
  private static final String FOLDER = "interrupted";

  private final Path folder;
  private final Path results;

  Aside(Path results) {
    this.results = results;
    this.folder = results.resolve(FOLDER);
  }

  /** Moves a file here as it is; gives its new place. */
  Path move(Path file) throws IOException {
    make();
    Path target = free(file.getFileName().toString(), null);
    Durable.rename(file, target);
    Durable.forceFolder(folder);
    return target;
  }

  /** Writes a file of this name and content, unless it is here already; gives its place. */
  Path write(String name, byte[] content) throws IOException {
    make();
    Path target = free(name, content);
    if (!Files.exists(target)) {
      Path temporary = Durable.temporary(target);
      Durable.write(temporary, new ByteArrayInputStream(content));
      Durable.rename(temporary, target);
      Durable.forceFolder(folder);
    }
    return target;
  }

  private void make() throws IOException {
    if (!Files.isDirectory(folder)) {
      Files.createDirectory(folder);
      Durable.forceFolder(results);
    }
  }

  private Path free(String name, byte @Nullable [] content) throws IOException {
    int dot = name.lastIndexOf('.');
    int end = dot < 0 ? name.length() : dot;
    Path target = folder.resolve(name);
    for (int number = 2; isTaken(target, content); number++) {
      target = folder.resolve(name.substring(0, end) + "-" + number + name.substring(end));
    }
    return target;
  }

  private static boolean isTaken(Path target, byte @Nullable [] content) throws IOException {
    return Files.exists(target)
        && (content == null || !Arrays.equals(Files.readAllBytes(target), content));
  }
}
