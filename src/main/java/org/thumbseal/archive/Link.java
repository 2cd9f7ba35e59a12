package org.thumbseal.archive;

import java.nio.file.Path;
import org.thumbseal.seal.ChainEnd;
import org.thumbseal.seal.LedgerEntry;
import org.thumbseal.seal.SealCheck;

/**
 * What is kept of a document while the chain is checked; the document itself is let go.
 *
 * @param file the document
 * @param entry the place it claims
 * @param seal what its own seal came to
 * @param reported whether a fault of its own has been told already
 */
record Link(Path file, LedgerEntry entry, SealCheck seal, boolean reported) {
  boolean sound() {
    return seal.intact();
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

  boolean isAt(ChainEnd end) {
    return sequence() == end.sequence() && digest().equals(end.digest());
  }

  /** What is wrong with the first document of a key when the end that it names is not there. */
  static String tornFrom(ChainEnd earlier) {
    return "continues document "
        + earlier.sequence()
        + " of an earlier key, which is not there as it was";
  }
}
