package org.thumbseal.cli;

import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.LinkOption;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.nio.file.StandardOpenOption;
import java.util.Arrays;
import java.util.HashSet;
import java.util.Set;
import java.util.function.Predicate;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.thumbseal.report.ReportFile;

/**
 * Where pages go. A file appears whole or not at all; it takes the place of an older report of the
 * same result, and of nothing else.
 */
final class ReportFolder {
  /** Names that people give to a file, who mean this one report. */
  private static final Pattern FILE = Pattern.compile("(?i).*\\.(html?|svg|csv|pdf)");

  private final Path folder;
  private final Set<String> written = new HashSet<>();

  private ReportFolder(Path folder) {
    this.folder = folder;
  }

  /** Makes the folder where it is missing. */
  static ReportFolder at(Path folder) {
    try {
      if (Files.exists(folder) && !Files.isDirectory(folder)) {
        throw Failure.usage(folder + ": is a file; name a folder with -o DIR");
      }
      if (!Files.exists(folder) && FILE.matcher(folder.toString()).matches()) {
        throw Failure.usage(folder + ": -o names a folder; files are named after their results");
      }
      Files.createDirectories(folder);
      return new ReportFolder(folder);
    } catch (IOException e) {
      throw Failure.machine(FileTrouble.inWords(e) + "; name another place with -o DIR");
    }
  }

  /** Writes a file and gives its path. */
  Path write(String name, String content) {
    Path file = folder.resolve(name);
    byte[] bytes = content.getBytes(StandardCharsets.UTF_8);
    try {
      if (!written.add(name)) {
        throw Failure.usage(file + ": two results would have this name; report them one by one");
      }
      if (!isThere(file, bytes)) {
        requireOwn(file, content);
        replace(file, bytes);
      }
      return file;
    } catch (IOException e) {
      throw Failure.machine(FileTrouble.inWords(e) + "; name another place with -o DIR");
    }
  }

  /**
   * Removes files of such names that could have been replaced by this content, and that were not
   * written now.
   */
  void removeOlder(Predicate<String> names, String content) {
    try (Stream<Path> all = Files.list(folder)) {
      for (Path file : all.filter(f -> names.test(f.getFileName().toString())).toList()) {
        if (isOwn(file, content) && !written.contains(file.getFileName().toString())) {
          Files.delete(file);
        }
      }
    } catch (IOException e) {
      throw Failure.machine(FileTrouble.inWords(e) + "; pages of an older run are still there");
    }
  }

  private static boolean isThere(Path file, byte[] bytes) throws IOException {
    return Files.isRegularFile(file, LinkOption.NOFOLLOW_LINKS)
        && Files.size(file) == bytes.length
        && Arrays.equals(Files.readAllBytes(file), bytes);
  }

  private static void requireOwn(Path file, String content) throws IOException {
    if (!Files.exists(file, LinkOption.NOFOLLOW_LINKS)) {
      return;
    }
    if (!isOwn(file, content)) {
      throw Failure.usage(
          file + ": is there, and is no report of this result; move it, or choose another -o DIR");
    }
  }

  private static boolean isOwn(Path file, String content) throws IOException {
    return Files.isRegularFile(file, LinkOption.NOFOLLOW_LINKS)
        && ReportFile.mayReplace(beginning(file), content);
  }

  private static String beginning(Path file) throws IOException {
    try (InputStream in = Files.newInputStream(file)) {
      return new String(in.readNBytes(ReportFile.BEGINNING), StandardCharsets.UTF_8);
    }
  }

  private static void replace(Path file, byte[] bytes) throws IOException {
    Path temporary = file.resolveSibling("." + file.getFileName() + ".tmp");
    Files.deleteIfExists(temporary);
    try {
      try (OutputStream out =
          Files.newOutputStream(
              temporary, StandardOpenOption.CREATE_NEW, StandardOpenOption.WRITE)) {
        out.write(bytes);
      }
      Files.move(temporary, file, StandardCopyOption.ATOMIC_MOVE);
    } finally {
      Files.deleteIfExists(temporary);
    }
  }
}
