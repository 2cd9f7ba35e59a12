package org.thumbseal.seal;

import java.security.GeneralSecurityException;
import java.security.KeyFactory;
import java.security.PublicKey;
import java.security.Signature;
import java.security.spec.X509EncodedKeySpec;
import java.util.HexFormat;
import java.util.Locale;
import org.jspecify.annotations.Nullable;
import org.thumbseal.json.Json;
import tools.jackson.databind.node.ObjectNode;

/** An Ed25519 public key (RFC 8032), known by its RFC 7638 thumbprint. */
public final class VerifyingKey {
  static final int LENGTH = 32;
  static final int SIGNATURE_LENGTH = 64;

  /** SubjectPublicKeyInfo of an Ed25519 key up to the key itself (RFC 8410 section 4). */
  private static final String SPKI_PREFIX = "302a300506032b6570032100";

  private final String x;
  private final PublicKey key;

  private VerifyingKey(String x, PublicKey key) {
    this.x = x;
    this.key = key;
  }

  /**
   * The key with this encoding.
   *
   * @param bytes the 32 bytes of RFC 8032 section 5.1.5
   * @throws KeyException if they are no point of the curve, or one of the few with which anything
   *     can be forged
   */
  static VerifyingKey of(byte[] bytes) throws KeyException {
    try {
      byte[] spki = HexFormat.of().parseHex(SPKI_PREFIX + HexFormat.of().formatHex(bytes));
      PublicKey key =
          KeyFactory.getInstance("Ed25519").generatePublic(new X509EncodedKeySpec(spki));
      // Only here does the JDK find out whether the bytes are a point at all.
      Signature.getInstance("Ed25519").initVerify(key);
      if (SmallOrder.contains(bytes)) {
        throw new KeyException("the public key is of small order: anything can be forged with it");
      }
      return new VerifyingKey(Base64Url.encode(bytes), key);
    } catch (GeneralSecurityException e) {
      throw new KeyException("the public key is not an Ed25519 key");
    }
  }

  /** RFC 7638 thumbprint with SHA-256: the {@code kid} of every signature with this key. */
  public String kid() {
    return Base64Url.encode(thumbprint());
  }

  /** The first 80 bits of the thumbprint in groups of four, to be read out and compared. */
  public String fingerprint() {
    String hex = HexFormat.of().formatHex(thumbprint(), 0, 10).toUpperCase(Locale.ROOT);
    return hex.replaceAll("(.{4})(?=.)", "$1-");
  }

  /**
   * The members that identify the key (RFC 8037 section 2): {@code crv}, {@code kty}, {@code x}.
   */
  public ObjectNode members() {
    return Json.object().put("crv", "Ed25519").put("kty", "OKP").put("x", x);
  }

  /** The key as a public JWK to hand out, with {@code kid}, {@code alg} and {@code use}. */
  public ObjectNode jwk() {
    return members().put("kid", kid()).put("alg", "EdDSA").put("use", "sig");
  }

  /** The key as SubjectPublicKeyInfo PEM, as openssl reads it. */
  public String pem() {
    return Pem.write("PUBLIC KEY", key.getEncoded());
  }

  /** Whether these 64 bytes are this key's signature of the message. */
  boolean verifies(byte[] message, byte[] signature) {
    try {
      Signature engine = Signature.getInstance("Ed25519");
      engine.initVerify(key);
      engine.update(message);
      return engine.verify(signature);
    } catch (GeneralSecurityException e) {
      // The JDK throws instead of answering when S is not below the group order (RFC 8032, 5.1.7).
      return false;
    }
  }

  private byte[] thumbprint() {
    return Sha256.digest("{\"crv\":\"Ed25519\",\"kty\":\"OKP\",\"x\":\"" + x + "\"}");
  }

  @Override
  public boolean equals(@Nullable Object other) {
    return other instanceof VerifyingKey that && that.x.equals(x);
  }

  @Override
  public int hashCode() {
    return x.hashCode();
  }

  @Override
  public String toString() {
    return "public key " + fingerprint();
  }
}
