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
    Optional<VerifyingKey> carried = carriedKey(document);
    if (carried.isPresent() && !carried.get().kid().equals(jws.kid())) {
      throw new BrokenSealException("the key in the document is not the one that signed");
    }
    Optional<TrustedKey> trusted = trust.find(jws.kid());
    Optional<VerifyingKey> key = trusted.map(TrustedKey::key).or(() -> carried);
    if (key.isEmpty()) {
      throw new BrokenSealException("cannot be checked: its key is neither in it nor trusted here");
    }
    if (!jws.verifies(Seal.payload(document), key.get())) {
      throw new BrokenSealException("the content is not what was signed");
    }
    return trusted
        .map(t -> new SealCheck(SealAnswer.TRUSTED_KEY, t.name(), ""))
        .orElse(new SealCheck(SealAnswer.UNKNOWN_KEY, key.get().fingerprint(), ""));
  }

  private static Optional<VerifyingKey> carriedKey(ObjectNode document) throws KeyException {
    JsonNode ledger = document.get(Seal.LEDGER);
    JsonNode key = (ledger == null ? document : ledger).get(Seal.KEY);
    if (key == null) {
      return Optional.empty();
    }
    if (!(key instanceof ObjectNode jwk)) {
      throw new KeyException("the key in the document is not a JWK");
    }
    return Optional.of(Jwk.read(jwk));
  }
}
