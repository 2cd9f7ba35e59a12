package org.thumbseal.cli;

import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import org.thumbseal.capture.BareRecording;
import org.thumbseal.capture.CaptureFormatException;
import org.thumbseal.capture.CaptureReader;
import org.thumbseal.capture.Columns;
import org.thumbseal.capture.TableReader;
import org.thumbseal.json.DocumentView;
import org.thumbseal.pipeline.CurveFrame;
import org.thumbseal.pipeline.CurveReading;
import org.thumbseal.report.TestShape;
import org.thumbseal.report.Trace;
import org.thumbseal.report.TraceBuilder;
import org.thumbseal.wire.PlainLines;

/**
 * The recording of a result: a capture, or the table of another program.
 *
 * @param file it is in
 * @param document that was graded from it
 */
record ReportRecording(Path file, DocumentView document) {
  /** The curve, thin enough to be drawn in so many stretches. */
  Trace trace(int stretches) {
    TestShape shape = new TestShape(document);
    TraceBuilder builder = new TraceBuilder(shape.span(), stretches);
    try {
      read(builder);
      return builder.trace();
    } catch (IOException | CaptureFormatException e) {
      return Trace.none("its recording cannot be read: " + e.getMessage());
    }
  }

  /** Hands on every sample. */
  void read(CurveReading.Taker taker) throws IOException, CaptureFormatException {
    var frame = new TestShape(document).frame();
    if (isCapture()) {
      try (InputStream in = Files.newInputStream(file)) {
        CurveReading.of(CaptureReader.open(in), frame, taker);
      }
    } else if (Files.size(file) > TableReader.LARGEST_BYTES) {
      throw new CaptureFormatException("it is too large for a table");
    } else {
      read(document.text("/evidence/columns").orElse(""), frame, taker);
    }
  }

  private void read(String columns, CurveFrame frame, CurveReading.Taker taker)
      throws IOException, CaptureFormatException {
    byte[] bytes = Files.readAllBytes(file);
    if (PlainLines.isMeant(columns)) {
      CurveReading.of(BareRecording.read(bytes, columns), frame, taker);
    } else {
      CurveReading.of(TableReader.read(bytes, Columns.parse(columns)), frame, taker);
    }
  }

  private boolean isCapture() throws IOException {
    try (InputStream in = Files.newInputStream(file)) {
      return CaptureReader.looksLikeCapture(in.readNBytes(CaptureReader.sniffedBytes()));
    }
  }
}
