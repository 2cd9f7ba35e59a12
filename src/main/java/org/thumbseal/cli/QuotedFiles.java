package org.thumbseal.cli;

import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import org.thumbseal.archive.StoredCapture;
import org.thumbseal.index.IndexedTest;
import org.thumbseal.index.IndexedTest.Origin;
import org.thumbseal.json.DocumentView;
import org.thumbseal.json.Json;
import org.thumbseal.json.JsonGate;
import org.thumbseal.json.JsonRefusedException;
import org.thumbseal.report.Report;
import org.thumbseal.report.SealFacts;
import org.thumbseal.seal.Seal;
import tools.jackson.databind.node.ObjectNode;

/**
 * Documents of which the index says where they lie. Their seals were checked when they were taken
 * in; a file that is not the very same any more is not read.
 *
 * @param results directory
 */
record QuotedFiles(Path results) {
  /** Stretches of a small curve. */
  private static final int STRETCHES = 200;

  /** The document; empty where it is not there or not the same, as in another computer's folder. */
  Optional<ObjectNode> document(Origin origin) {
    try {
      ObjectNode document = JsonGate.read(results.resolve(origin.path()));
      return Seal.digest(document).equals(origin.digest())
          ? Optional.of(document)
          : Optional.empty();
    } catch (JsonRefusedException e) {
      return Optional.empty();
    }
  }

  /** What a page takes of a test, with its curve where that can be had. */
  Report report(IndexedTest test) {
    Optional<ObjectNode> document = document(test.origin());
    SealFacts seal =
        new SealFacts(
            SealFacts.State.TRUSTED,
            "",
            "",
            Optional.of(test.origin().kid()),
            Optional.of(test.origin().digest()));
    if (document.isEmpty()) {
      return new Report(DocumentView.of(Json.object()), seal, "its document is not at hand")
          .standing(test.standing(), List.of());
    }
    DocumentView view = DocumentView.of(document.get());
    Path file = results.resolve(test.origin().path());
    StoredCapture capture = StoredCapture.beside(file, document.get());
    Report report = new Report(view, seal, capture.fault()).standing(test.standing(), List.of());
    return capture
        .file()
        .map(recording -> report.drawn(new ReportRecording(recording, view).trace(STRETCHES)))
        .orElse(report);
  }
}
