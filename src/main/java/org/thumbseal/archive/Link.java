package org.thumbseal.archive;

import java.nio.file.Path;
import org.thumbseal.seal.ChainEnd;
import org.thumbseal.seal.SealAnswer;

/**
 * What is kept of a document while the chain is checked; the document itself is let go. About 200
 * bytes with its name: folder and standing are shared by all that have the same.
 *
 * @param folder where the document lies
 * @param name of its file
 * @param sequence the place it claims
 * @param digest of the document
 * @param previous digest of the one before, as it says
 * @param standing what its own seal came to
 */
record Link(
    Path folder, String name, long sequence, Digest digest, Digest previous, Standing standing) {

  /**
   * What the seal of a document came to, whatever its place.
   *
   * @param answer of the seal
   * @param signer whose seal it is
   * @param reason what is wrong with it; empty when nothing is
   * @param reported whether a fault of its own has been told already
   */
  record Standing(SealAnswer answer, String signer, String reason, boolean reported) {}

  Path file() {
    return folder.resolve(name);
  }

  boolean sound() {
    return standing.answer() != SealAnswer.BROKEN_SEAL;
  }

  boolean follows(Link before) {
    return previous.equals(before.digest);
  }

  boolean isAt(ChainEnd end) {
    return sequence == end.sequence() && digest.equals(Digest.of(end.digest()));
  }

  /** What is wrong with the first document of a key when the end that it names is not there. */
  static String tornFrom(ChainEnd earlier) {
    return "continues document "
        + earlier.sequence()
        + " of an earlier key, which is not there as it was";
  }
}
