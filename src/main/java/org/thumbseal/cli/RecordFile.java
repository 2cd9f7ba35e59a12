package org.thumbseal.cli;

import java.io.IOException;
import java.io.InputStream;
import java.nio.file.AccessDeniedException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import org.thumbseal.capture.BareRecording;
import org.thumbseal.capture.CaptureFormatException;
import org.thumbseal.capture.CaptureHeader;
import org.thumbseal.capture.CaptureReader;
import org.thumbseal.capture.Columns;
import org.thumbseal.capture.TableReader;
import org.thumbseal.pipeline.Grader;
import org.thumbseal.pipeline.GradingSettings;
import org.thumbseal.record.ResultDocument;
import org.thumbseal.seal.Sha256;
import org.thumbseal.wire.PlainLines;

/** A capture of any length, or a table, on disk; every way it can go wrong is one line. */
record RecordFile(Path path) {

  /** The results in it; a capture is one whatever columns are named. */
  List<ResultDocument> grade(Optional<Columns> columns, GradingSettings settings) {
    try {
      requireFile();
      if (CaptureFile.isOne(path)) {
        return capture(settings);
      }
      return settings.sensor().lines().isPresent()
          ? bare(settings.sensor().lines().get(), settings)
          : table(columns.orElseThrow(this::noCapture), settings);
    } catch (CaptureFormatException e) {
      throw Failure.usage(path + ": " + e.getMessage());
    } catch (AccessDeniedException e) {
      throw Failure.usage(path + ": may not be read: permission denied");
    } catch (IOException e) {
      throw Failure.machine(path + ": cannot be read: " + e.getMessage());
    }
  }

  /** That a format given by the user is not needed, or not heeded: a capture says its own. */
  Optional<String> formatRemark(GradingSettings settings) {
    return settings
        .sensor()
        .lines()
        .flatMap(given -> CaptureFile.header(path).map(header -> remark(given, header)));
  }

  private String remark(PlainLines given, CaptureHeader header) {
    String own = header.fact(CaptureHeader.FORMAT).orElse("the wire protocol");
    return path
        + (own.equals(given.text())
            ? ": its header says the same format; --format is not needed"
            : ": its header says how its lines are written (" + own + "); --format is not heeded");
  }

  private void requireFile() throws IOException {
    if (!Files.exists(path)) {
      throw Failure.usage(path + ": no such file");
    }
    if (Files.isDirectory(path)) {
      throw Failure.usage(path + ": is a directory; name the capture files in it");
    }
    if (!Files.isRegularFile(path)) {
      throw Failure.usage(
          path + ": is a pipe or a device; save what comes from it, then replay that");
    }
    if (Files.size(path) == 0) {
      throw Failure.usage(path + ": is empty");
    }
  }

  private List<ResultDocument> capture(GradingSettings settings)
      throws IOException, CaptureFormatException {
    Grader.Source source = Grader.Source.capture(name(), digest());
    try (InputStream in = Files.newInputStream(path)) {
      return Grader.grade(CaptureReader.open(in), source, settings);
    }
  }

  private List<ResultDocument> bare(PlainLines format, GradingSettings settings)
      throws IOException, CaptureFormatException {
    byte[] bytes = bytes();
    Grader.Source source = new Grader.Source(name(), Sha256.hex(bytes), Optional.of(format.text()));
    return Grader.grade(BareRecording.read(bytes, format), source, settings);
  }

  private List<ResultDocument> table(Columns columns, GradingSettings settings)
      throws IOException, CaptureFormatException {
    byte[] bytes = bytes();
    Grader.Source source =
        new Grader.Source(name(), Sha256.hex(bytes), Optional.of(columns.text()));
    return Grader.grade(TableReader.read(bytes, columns), source, settings);
  }

  private byte[] bytes() throws IOException {
    if (Files.size(path) > TableReader.LARGEST_BYTES) {
      throw Failure.usage(
          path
              + ": larger than "
              + (TableReader.LARGEST_BYTES >> 20)
              + " MiB; cut it around the test");
    }
    return Files.readAllBytes(path);
  }

  private String digest() throws IOException {
    try (InputStream in = Files.newInputStream(path)) {
      return Sha256.hex(in);
    }
  }

  private Failure noCapture() {
    return Failure.usage(
        path
            + ": not a capture file; for a table of times and pressures add"
            + " --columns time=NAME:UNIT,pressure=NAME:UNIT, for bare lines of a board --format");
  }

  private String name() {
    return path.getFileName().toString();
  }
}
