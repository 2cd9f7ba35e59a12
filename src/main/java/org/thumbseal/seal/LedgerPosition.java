package org.thumbseal.seal;

import java.util.Optional;
import tools.jackson.databind.JsonNode;

/**
 * The place of a document in the ledger of one key.
 *
 * @param sequence counts from 1
 * @param previous digest of the document before, {@link Sha256#ZEROS} for the first
 * @param continues for the first of a key in a directory that another key sealed in before: where
 *     that one's chain ended
 */
public record LedgerPosition(long sequence, String previous, Optional<ChainEnd> continues) {
  /** Where the first document of a key stands. */
  public static final LedgerPosition FIRST = new LedgerPosition(1, Sha256.ZEROS);

  /** A place that continues no other chain. */
  public LedgerPosition(long sequence, String previous) {
    this(sequence, previous, Optional.empty());
  }

  /** The same place, tied to the end of an earlier key's chain. */
  public LedgerPosition continuing(ChainEnd earlier) {
    return new LedgerPosition(sequence, previous, Optional.of(earlier));
  }

  /** Whether number and predecessor are the same. */
  public boolean isAt(LedgerPosition other) {
    return sequence == other.sequence && previous.equals(other.previous);
  }

  /** What the member {@code ledger} says; empty when it is malformed. */
  static Optional<LedgerPosition> read(JsonNode ledger) {
    JsonNode sequence = ledger.path("sequence");
    Optional<String> previous = Jwk.text(ledger, "previous").filter(p -> p.matches("[0-9a-f]{64}"));
    Optional<ChainEnd> continues = ChainEnd.read(ledger.path(Seal.CONTINUES));
    boolean malformed = continues.isEmpty() && ledger.has(Seal.CONTINUES);
    if (!sequence.isIntegralNumber() || sequence.longValue() < 1 || malformed) {
      return Optional.empty();
    }
    return previous.map(p -> new LedgerPosition(sequence.longValue(), p, continues));
  }
}
