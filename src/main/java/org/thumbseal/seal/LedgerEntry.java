package org.thumbseal.seal;

import java.util.Optional;
import java.util.function.BiFunction;
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
    Optional<LedgerPosition> position = LedgerPosition.read(document.path(Seal.LEDGER));
    return kid(document)
        .flatMap(k -> position.map(p -> new LedgerEntry(k, p, Seal.digest(document))));
  }

  /** Only key and place, without the digest, which takes most of the time. */
  public static <T> Optional<T> place(
      ObjectNode document, BiFunction<String, LedgerPosition, T> taker) {
    Optional<LedgerPosition> position = LedgerPosition.read(document.path(Seal.LEDGER));
    return kid(document).flatMap(k -> position.map(p -> taker.apply(k, p)));
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
