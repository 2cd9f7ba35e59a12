package org.thumbseal.cli;

import java.io.IOException;
import java.nio.file.AccessDeniedException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import org.thumbseal.capture.CaptureFormatException;
import org.thumbseal.capture.CaptureReader;
import org.thumbseal.capture.Columns;
import org.thumbseal.capture.TableReader;
import org.thumbseal.pipeline.Grader;
import org.thumbseal.pipeline.GradingSettings;
import org.thumbseal.record.ResultDocument;
import org.thumbseal.seal.Sha256;

/** A capture or a table on disk, whole in memory. */
final class RecordFile {
  private static final long LARGEST = 256L << 20;

  private final Path path;
  private final byte[] bytes;

  private RecordFile(Path path, byte[] bytes) {
    this.path = path;
    this.bytes = bytes;
  }

  /** Reads a file; every way this can go wrong is one line. */
  static RecordFile read(Path path) {
    try {
      if (!Files.exists(path)) {
        throw Failure.usage(path + ": no such file");
      }
      if (Files.isDirectory(path)) {
        throw Failure.usage(path + ": is a directory; name the capture files in it");
      }
      if (Files.size(path) > LARGEST) {
        throw Failure.usage(path + ": larger than 256 MiB; cut it around the test");
      }
      return new RecordFile(path, Files.readAllBytes(path));
    } catch (AccessDeniedException e) {
      throw Failure.machine(path + ": may not be read: permission denied");
    } catch (IOException e) {
      throw Failure.machine(path + ": cannot be read: " + e.getMessage());
    }
  }

  byte[] bytes() {
    return bytes;
  }

  /** The results in it; a capture is one whatever columns are named. */
  List<ResultDocument> grade(Optional<Columns> columns, GradingSettings settings) {
    try {
      if (bytes.length == 0) {
        throw Failure.usage(path + ": is empty");
      }
      if (CaptureReader.looksLikeCapture(bytes)) {
        Grader.Source source = Grader.Source.capture(name(), Sha256.hex(bytes));
        return Grader.grade(CaptureReader.read(bytes), source, settings);
      }
      return table(columns.orElseThrow(this::noCapture), settings);
    } catch (CaptureFormatException e) {
      throw Failure.usage(path + ": " + e.getMessage());
    }
  }

  private List<ResultDocument> table(Columns columns, GradingSettings settings)
      throws CaptureFormatException {
    Grader.Source source =
        new Grader.Source(name(), Sha256.hex(bytes), Optional.of(columns.text()));
    return Grader.grade(TableReader.read(bytes, columns), source, settings);
  }

  private Failure noCapture() {
    return Failure.usage(
        path
            + ": not a capture file; for a table of times and pressures add"
            + " --columns time=NAME:UNIT,pressure=NAME:UNIT");
  }

  private String name() {
    return path.getFileName().toString();
  }
}
