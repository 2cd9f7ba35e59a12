package org.thumbseal.archive;

import java.nio.file.Path;
import java.util.Optional;
import tools.jackson.databind.node.ObjectNode;

/**
 * The recording that a document was graded from, where it lies beside it unaltered.
 *
 * @param file absent where it is missing, altered, or cannot be trusted to be a file at all
 * @param fault why, in half a sentence; empty where nothing is wrong
 */
public record StoredCapture(Optional<Path> file, String fault) {
  /** Looks for the recording that a document names, and holds it against the digest there. */
  public static StoredCapture beside(Path document, ObjectNode content) {
    CaptureCheck check = CaptureCheck.of(document, content.path("evidence"));
    return check == CaptureCheck.SAME
        ? new StoredCapture(
            Optional.of(document.resolveSibling(content.at("/evidence/capture").asString(""))), "")
        : new StoredCapture(
            Optional.empty(),
            check == CaptureCheck.NONE ? "the document names no recording" : check.remark());
  }
}
