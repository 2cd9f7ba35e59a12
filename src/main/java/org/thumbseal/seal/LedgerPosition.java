package org.thumbseal.seal;

/**
 * The place of a document in the ledger of one key.
 *
 * @param sequence counts from 1
 * @param previous digest of the document before, {@link Sha256#ZEROS} for the first
 */
public record LedgerPosition(long sequence, String previous) {
  /** Where the first document of a key stands. */
  public static final LedgerPosition FIRST = new LedgerPosition(1, Sha256.ZEROS);
}
