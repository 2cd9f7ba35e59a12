package org.thumbseal.seal;

import java.util.Optional;
import org.thumbseal.json.Printable;
import tools.jackson.databind.node.ObjectNode;

/**
 * A public key that somebody vouches for.
 *
 * @param name whose key it is, as the file that holds it says, fit to be shown; else its
 *     fingerprint
 * @param key the key
 * @param validity of which time its documents are trusted
 */
public record TrustedKey(String name, VerifyingKey key, Validity validity) {
  static final String NAME = "name";

  /** A key without a name, for all times. */
  static TrustedKey of(VerifyingKey key) {
    return new TrustedKey(key.fingerprint(), key, Validity.ALWAYS);
  }

  /**
   * The key that a JWK describes.
   *
   * @throws KeyException if it is no public Ed25519 key, or bears dates that are none
   */
  static TrustedKey read(ObjectNode jwk) throws KeyException {
    VerifyingKey key = Jwk.read(jwk);
    String name = Jwk.text(jwk, NAME).filter(n -> !n.isBlank()).orElse(key.fingerprint());
    return new TrustedKey(Printable.line(name), key, Validity.read(jwk));
  }

  /** Name and bounds in words. */
  public String text() {
    return (name + " " + validity.text()).strip();
  }

  /** What a trust file says of it. */
  ObjectNode entry() {
    ObjectNode entry = key.jwk().put(NAME, name);
    validity.write(entry);
    return entry;
  }

  boolean isNamed() {
    return !name.equals(key.fingerprint());
  }

  /** The same key said twice: whatever either of them limits is limited. */
  TrustedKey and(TrustedKey other) {
    return new TrustedKey(isNamed() ? name : other.name, key, validity.and(other.validity));
  }

  /** Whether a document that this key has sealed is of a time for which it is trusted. */
  SealCheck check(ObjectNode document) {
    Optional<StatedTime> time = DocumentTime.of(document);
    if (time.filter(t -> !validity.contains(t.first())).isPresent()) {
      String why = "it is of " + time.get().text() + ", and " + bounds();
      return new SealCheck(SealAnswer.UNKNOWN_KEY, key.fingerprint(), why);
    }
    // A head is of no time; whoever has the key can date anything as he likes in any case.
    boolean undated = time.isEmpty() && document.has(Seal.LEDGER);
    boolean told = undated && !validity.equals(Validity.ALWAYS);
    return new SealCheck(
        SealAnswer.TRUSTED_KEY, name, told ? "it bears no date, and " + bounds() : "");
  }

  private String bounds() {
    return "the key of " + name + " is trusted " + validity.text() + " only";
  }
}
