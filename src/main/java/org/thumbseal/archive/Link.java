package org.thumbseal.archive;

import java.nio.file.Path;
import org.thumbseal.seal.LedgerEntry;
import org.thumbseal.seal.SealAnswer;

/**
 * What is kept of a document while the chain is checked; the document itself is let go.
 *
 * @param file the document
 * @param entry the place it claims
 * @param answer what its own seal came to
 * @param signer whose seal it is
 * @param reported whether a fault of its own has been told already
 */
record Link(Path file, LedgerEntry entry, SealAnswer answer, String signer, boolean reported) {
  boolean sound() {
    return answer != SealAnswer.BROKEN_SEAL;
  }

  long sequence() {
    return entry.position().sequence();
  }

  String digest() {
    return entry.digest();
  }

  boolean follows(Link before) {
    return entry.position().previous().equals(before.digest());
  }
}
