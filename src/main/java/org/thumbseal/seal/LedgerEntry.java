package org.thumbseal.seal;

import java.util.Optional;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.node.ObjectNode;

/**
 * What a sealed document says of its place, taken as it stands: whether it is true is for {@link
 * SealVerifier} and the chain to tell.
 *
 * @param kid the key that is named as the signer
 * @param position the place claimed
 * @param digest {@link Seal#digest} of the document
 */
public record LedgerEntry(String kid, LedgerPosition position, String digest) {
  /** The entry of a document; empty when it is not sealed or the ledger is malformed. */
  public static Optional<LedgerEntry> read(ObjectNode document) {
    JsonNode sequence = document.path(Seal.LEDGER).path("sequence");
    Optional<String> previous =
        Jwk.text(document.path(Seal.LEDGER), "previous").filter(p -> p.matches("[0-9a-f]{64}"));
    Optional<String> kid = kid(document);
    if (!sequence.isIntegralNumber() || sequence.longValue() < 1) {
      return Optional.empty();
    }
    return kid.flatMap(
        k ->
            previous.map(
                p ->
                    new LedgerEntry(
                        k, new LedgerPosition(sequence.longValue(), p), Seal.digest(document))));
  }

  private static Optional<String> kid(ObjectNode document) {
    try {
      String signature = Jwk.text(document, Seal.SIGNATURE).orElse("");
      return Optional.of(DetachedJws.parse(signature).kid());
    } catch (BrokenSealException e) {
      return Optional.empty();
    }
  }
}
