package org.thumbseal.archive;

import java.nio.file.Path;
import java.util.Optional;
import org.thumbseal.json.JsonGate;
import org.thumbseal.json.JsonRefusedException;
import org.thumbseal.seal.LedgerEntry;
import org.thumbseal.seal.SealAnswer;
import org.thumbseal.seal.SealCheck;
import org.thumbseal.seal.SealVerifier;
import tools.jackson.databind.node.ObjectNode;

/**
 * What one document alone and the capture beside it come to.
 *
 * @param seal of the document
 * @param capture beside it
 * @param entry its place in the ledger, as far as it can be read
 * @param facts what else it says
 */
record DocumentCheck(
    SealCheck seal, CaptureCheck capture, Optional<LedgerEntry> entry, DocumentFacts facts) {
  static DocumentCheck of(Path file, SealVerifier verifier) throws JsonRefusedException {
    ObjectNode document = JsonGate.read(file);
    return new DocumentCheck(
        verifier.check(document),
        CaptureCheck.of(file, document.path("evidence")),
        LedgerEntry.read(document),
        DocumentFacts.of(document));
  }

  /** The answer so far, a capture that was altered counted as a broken seal. */
  SealAnswer answer(boolean captureRequired) {
    boolean lost =
        switch (capture) {
          case SAME, NONE -> false;
          case MISSING -> captureRequired;
          case DIFFERENT, UNREADABLE, UNSAFE, LINK -> true;
        };
    return lost ? SealAnswer.BROKEN_SEAL : seal.answer();
  }

  /** Whether its name keeps those from finding it whom it concerns. */
  boolean isHiddenAt(Path file) {
    return seal.intact() && facts.isHiddenAt(file);
  }

  /** What is odd about its name, in half a sentence; of an altered document that says nothing. */
  String nameRemark(Path file) {
    return seal.intact() ? facts.nameRemark(file) : "";
  }

  String remark() {
    return seal.reason().isEmpty() ? capture.remark() : seal.reason();
  }
}
