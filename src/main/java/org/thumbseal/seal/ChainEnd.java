package org.thumbseal.seal;

/**
 * The last document of one key's chain.
 *
 * @param kid thumbprint of the key
 * @param sequence number of the document, and so how many there are; 0 when there is none
 * @param digest {@link Seal#digest} of the document, {@link Sha256#ZEROS} when there is none
 */
public record ChainEnd(String kid, long sequence, String digest) {
  /** The chain of a key that has sealed nothing yet. */
  public static ChainEnd none(String kid) {
    return new ChainEnd(kid, 0, Sha256.ZEROS);
  }

  /** Where the next document will stand. */
  public LedgerPosition next() {
    return new LedgerPosition(sequence + 1, digest);
  }

  /** The chain with this document, sealed at {@link #next}, at its end. */
  public ChainEnd then(String documentDigest) {
    return new ChainEnd(kid, sequence + 1, documentDigest);
  }
}
