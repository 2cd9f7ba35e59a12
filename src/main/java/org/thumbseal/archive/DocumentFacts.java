package org.thumbseal.archive;

import java.nio.file.Path;
import java.util.Optional;
import org.thumbseal.json.CorrectionReader;
import tools.jackson.databind.node.ObjectNode;

/**
 * What of a document is told besides its seal and place.
 *
 * @param kind of document; empty when it has none
 * @param capture name of the capture; empty when it has none
 * @param storedAs folder and name by which it is stored, up to the first eight digits of its id;
 *     empty when it has no id
 * @param period its date
 * @param correction the document itself if it is a correction
 */
record DocumentFacts(
    String kind,
    String capture,
    String storedAs,
    Optional<Period> period,
    Optional<ObjectNode> correction) {
  static DocumentFacts of(ObjectNode document) {
    return new DocumentFacts(
        document.path("kind").asString(""),
        document.path("evidence").path("capture").asString(""),
        storedAs(document),
        Period.of(document),
        Optional.of(document).filter(CorrectionReader::isCorrection));
  }

  /**
   * Whether a file is where a document like this is stored; names are no part of what is sealed.
   */
  boolean isStoredAt(Path file) {
    Path folder = file.getParent();
    String name = (folder == null ? "" : folder.getFileName()) + "/" + file.getFileName();
    return name.startsWith(storedAs);
  }

  /** What is odd about the name of a file with this document, in half a sentence; or nothing. */
  String nameRemark(Path file) {
    String remark = "bears another name than it was stored under, " + storedAs;
    if (isHiddenAt(file)) {
      return remark + "; nobody finds this " + kind + " here: give it its name back";
    }
    return isStoredAt(file) ? "" : remark;
  }

  /**
   * Whether it changes what is shown and counted, and yet nobody finds it: a correction that makes
   * a result void would be undone by a new name for its file.
   */
  boolean isHiddenAt(Path file) {
    return !storedAs.isEmpty() && !ResultName.isFound(file, kind);
  }

  private static String storedAs(ObjectNode document) {
    try {
      ResultName name = ResultName.of(document);
      return name.folder() + "/" + name.withIdDigits(Placement.FEWEST_ID_DIGITS);
    } catch (IllegalArgumentException e) {
      // Without an id none is ever stored: nothing to hold its name against.
      return "";
    }
  }
}
