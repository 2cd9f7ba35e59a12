package org.thumbseal.seal;

import java.util.Optional;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.node.ObjectNode;

/** Checks seals against the keys that are trusted. */
public final class SealVerifier {
  private final TrustStore trust;

  /** A verifier that tells these keys from strangers'. */
  public SealVerifier(TrustStore trust) {
    this.trust = trust;
  }

  /** Checks the seal of one document that came through the gate; its place in the chain is not. */
  public SealCheck check(ObjectNode document) {
    JsonNode signature = document.get(Seal.SIGNATURE);
    if (signature == null) {
      return SealCheck.broken("there is no signature");
    }
    try {
      return check(
          document, DetachedJws.parse(signature.isString() ? signature.stringValue() : ""));
    } catch (BrokenSealException | KeyException e) {
      return SealCheck.broken(String.valueOf(e.getMessage()));
    }
  }

  private SealCheck check(ObjectNode document, DetachedJws jws)
      throws BrokenSealException, KeyException {
    Optional<TrustedKey> trusted = trust.find(jws.kid());
    VerifyingKey key = key(document, jws.kid(), trusted);
    if (!jws.verifies(Seal.payload(document), key)) {
      throw new BrokenSealException("the content is not what was signed");
    }
    return trusted
        .map(t -> t.check(document))
        .orElse(new SealCheck(SealAnswer.UNKNOWN_KEY, key.fingerprint(), ""));
  }

  /** The key with this thumbprint: the trusted one, else the one in the document, if they agree. */
  private static VerifyingKey key(ObjectNode document, String kid, Optional<TrustedKey> trusted)
      throws BrokenSealException, KeyException {
    JsonNode ledger = document.get(Seal.LEDGER);
    JsonNode carried = (ledger == null ? document : ledger).get(Seal.KEY);
    if (trusted.isPresent() && (carried == null || carried.equals(trusted.get().key().members()))) {
      return trusted.get().key();
    }
    if (!(carried instanceof ObjectNode jwk)) {
      throw new BrokenSealException("cannot be checked: its key is neither in it nor trusted here");
    }
    VerifyingKey key = Jwk.read(jwk);
    if (!key.kid().equals(kid)) {
      throw new BrokenSealException("the key in the document is not the one that signed");
    }
    return key;
  }
}
