package org.thumbseal.report;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.thumbseal.capture.Capture;
import org.thumbseal.capture.CaptureReader;
import org.thumbseal.json.CorrectionTree;
import org.thumbseal.json.DocumentView;
import org.thumbseal.json.JsonGate;
import org.thumbseal.pipeline.CurvePoints;
import org.thumbseal.pipeline.CurveReading;
import org.thumbseal.pipeline.Grader;
import org.thumbseal.pipeline.GradingSettings;
import org.thumbseal.record.ResultDocument;
import org.thumbseal.seal.Sha256;
import tools.jackson.databind.node.ObjectNode;

/** A golden capture with its document, as a report sees them. */
record ReportFixture(String name, ObjectNode document) {
  private static final Path FOLDER = Path.of("fixtures", "captures");

  static ReportFixture of(String name) throws Exception {
    return new ReportFixture(name, JsonGate.read(FOLDER.resolve(name + ".json")));
  }

  private Path file() {
    return FOLDER.resolve(name + ".log");
  }

  DocumentView view() {
    return DocumentView.of(document);
  }

  double number(String place) {
    return document.at(place).doubleValue();
  }

  /** Hands on the curve as the document's own numbers give it. */
  void read(CurveReading.Taker taker) throws Exception {
    try (var in = Files.newInputStream(file())) {
      CurveReading.of(CaptureReader.open(in), new TestShape(view()).frame(), taker);
    }
  }

  Report report() throws Exception {
    TraceBuilder builder = new TraceBuilder(new TestShape(view()).span(), 700);
    read(builder);
    return new Report(view(), SealFacts.NONE, "")
        .standing(CorrectionTree.standing(document), List.of())
        .drawn(builder.trace());
  }

  /** The curve as the measurement itself gives it: another way to the same numbers. */
  List<CurvePoints.Point> measured() throws Exception {
    byte[] bytes = Files.readAllBytes(file());
    Capture capture = CaptureReader.read(bytes);
    ResultDocument result =
        Grader.grade(
                capture,
                Grader.Source.capture(file().getFileName().toString(), Sha256.hex(bytes)),
                GradingSettings.DEFAULT)
            .get(0);
    return CurvePoints.of(capture, result.measurement().orElseThrow());
  }
}
