package org.thumbseal.seal;

import org.thumbseal.json.Canonical;
import tools.jackson.databind.node.ObjectNode;

/**
 * Seals documents: a detached signature over the canonical form of everything but the signature
 * itself. The public key goes along inside the signed part ({@code key}), so that a stranger can
 * tell an intact seal from a broken one; that makes nobody trust the key.
 */
public final class Seal {
  /** Member that holds the signature. */
  public static final String SIGNATURE = "signature";

  /** Member that holds the place in the ledger. */
  public static final String LEDGER = "ledger";

  static final String KEY = "key";
  static final String CONTINUES = "continues";

  private Seal() {}

  /**
   * A sealed copy of a result document; a ledger or signature that it had is replaced.
   *
   * @throws IllegalArgumentException if the document has no canonical form
   */
  public static ObjectNode seal(ObjectNode document, LedgerPosition position, SigningKey key) {
    ObjectNode sealed = document.deepCopy();
    ObjectNode ledger =
        sealed
            .putObject(LEDGER)
            .put("sequence", position.sequence())
            .put("previous", position.previous());
    position.continues().ifPresent(end -> end.write(ledger.putObject(CONTINUES)));
    ledger.set(KEY, key.verifyingKey().members());
    return sign(sealed, key);
  }

  /** The document with its signature put in, or put anew. */
  static ObjectNode sign(ObjectNode document, SigningKey key) {
    document.remove(SIGNATURE);
    return document.put(SIGNATURE, DetachedJws.sign(Canonical.bytes(document), key));
  }

  /** SHA-256 of the canonical form with the signature: what the next document names. */
  public static String digest(ObjectNode sealed) {
    return Sha256.hex(Canonical.bytes(sealed));
  }

  static byte[] payload(ObjectNode sealed) {
    ObjectNode content = sealed.deepCopy();
    content.remove(SIGNATURE);
    return Canonical.bytes(content);
  }
}
