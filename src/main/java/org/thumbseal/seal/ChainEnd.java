package org.thumbseal.seal;

import java.util.Optional;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.node.ObjectNode;

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

  /** The end that an object names; empty when it names none. */
  static Optional<ChainEnd> read(JsonNode node) {
    JsonNode sequence = node.path("sequence");
    Optional<String> digest = Jwk.text(node, "digest").filter(d -> d.matches("[0-9a-f]{64}"));
    if (!sequence.isIntegralNumber() || sequence.longValue() < 1 || digest.isEmpty()) {
      return Optional.empty();
    }
    return Jwk.text(node, "kid").map(k -> new ChainEnd(k, sequence.longValue(), digest.get()));
  }

  void write(ObjectNode node) {
    node.put("kid", kid).put("sequence", sequence).put("digest", digest);
  }
}
