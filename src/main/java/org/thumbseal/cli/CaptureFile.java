package org.thumbseal.cli;

import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Optional;
import org.thumbseal.capture.CaptureFormatException;
import org.thumbseal.capture.CaptureHeader;
import org.thumbseal.capture.CaptureReader;

/** Captures, told from other files by how they begin. */
final class CaptureFile {
  private CaptureFile() {}

  /** Whether a file is a capture; one that cannot be read is none. */
  static boolean isOne(Path file) {
    if (!Files.isRegularFile(file)) {
      return false;
    }
    try (InputStream in = Files.newInputStream(file)) {
      return CaptureReader.looksLikeCapture(in.readNBytes(CaptureReader.sniffedBytes()));
    } catch (IOException e) {
      return false;
    }
  }

  /** The header of a capture; empty where it is none, or a broken one. */
  static Optional<CaptureHeader> header(Path file) {
    if (!isOne(file)) {
      return Optional.empty();
    }
    try (InputStream in = Files.newInputStream(file)) {
      return Optional.of(CaptureReader.open(in).header());
    } catch (IOException | CaptureFormatException e) {
      return Optional.empty();
    }
  }

  /** For a command that takes documents: what was named instead, and where the document is. */
  static String insteadOfDocument(Path file) {
    Path document =
        file.resolveSibling(file.getFileName().toString().replaceFirst("\\.log$", "") + ".json");
    return Files.exists(document)
        ? "is a capture; the sealed document is " + document
        : "is a capture, and no sealed document lies beside it: 'thumbseal replay' grades it,"
            + " with --results it seals what comes of it";
  }
}
