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
 * One document of a result directory, read and judged by its own seal. Captures and the places in
 * the chain are for {@link Verification}.
 *
 * @param document what was read; absent unless it may be counted
 * @param entry its place, as far as it can be read
 * @param fault why it may not be counted, in half a sentence; empty where it may
 */
public record StoredDocument(
    Optional<ObjectNode> document, Optional<LedgerEntry> entry, String fault) {
  /** Reads a file and checks its seal; safe for several threads at once. */
  public static StoredDocument read(Path file, SealVerifier verifier) {
    try {
      DirectoryMember.checkKind(file);
      ObjectNode document = JsonGate.read(file);
      Optional<LedgerEntry> entry = LedgerEntry.read(document);
      String fault = fault(file, document, verifier.check(document));
      if (fault.isEmpty() && entry.isEmpty()) {
        fault = "has no place in a ledger";
      }
      return new StoredDocument(Optional.of(document), entry, fault).judged();
    } catch (JsonRefusedException e) {
      return new StoredDocument(Optional.empty(), Optional.empty(), String.valueOf(e.getMessage()));
    }
  }

  private StoredDocument judged() {
    return fault.isEmpty() ? this : new StoredDocument(Optional.empty(), entry, fault);
  }

  private static String fault(Path file, ObjectNode document, SealCheck seal) {
    if (seal.answer() != SealAnswer.TRUSTED_KEY) {
      String signer = seal.signer().isEmpty() ? "" : " (" + seal.signer() + ")";
      String reason = seal.reason().isEmpty() ? "" : ": " + seal.reason();
      return "has a " + seal.answer().text() + signer + reason;
    }
    DocumentFacts facts = DocumentFacts.of(document);
    return facts.isHiddenAt(file) ? facts.nameRemark(file) : "";
  }
}
