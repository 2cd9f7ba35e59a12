package org.thumbseal.cli;

import java.io.BufferedWriter;
import java.io.IOException;
import java.io.OutputStream;
import java.io.OutputStreamWriter;
import java.io.Writer;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.util.Optional;

/** Where the answer goes: standard output, or a file that is whole or not there. */
final class OutputFile {
  private final Optional<Path> file;
  private final OutputStream standard;

  OutputFile(Optional<Path> file, OutputStream standard) {
    this.file = file;
    this.standard = standard;
  }

  /** What is written. */
  @FunctionalInterface
  interface Content {
    void write(Writer out) throws IOException;
  }

  /** Writes all of it in UTF-8. */
  void write(Content content) {
    try {
      if (file.isPresent()) {
        replace(file.get(), content);
      } else {
        Writer out = new BufferedWriter(new OutputStreamWriter(standard, StandardCharsets.UTF_8));
        content.write(out);
        out.flush();
      }
    } catch (IOException e) {
      throw Failure.machine(FileTrouble.inWords(e));
    }
  }

  private static void replace(Path file, Content content) throws IOException {
    if (Files.isDirectory(file)) {
      throw Failure.usage(file + ": is a folder; name a file");
    }
    Path part = file.resolveSibling("." + file.getFileName() + ".part");
    try {
      try (Writer out = Files.newBufferedWriter(part)) {
        content.write(out);
      }
      Files.move(part, file, StandardCopyOption.REPLACE_EXISTING);
    } finally {
      Files.deleteIfExists(part);
    }
  }
}
