package org.thumbseal.seal;

import java.security.GeneralSecurityException;
import java.security.KeyFactory;
import java.security.KeyPair;
import java.security.KeyPairGenerator;
import java.security.PrivateKey;
import java.security.SecureRandom;
import java.security.Signature;
import java.security.interfaces.EdECPrivateKey;
import java.security.spec.NamedParameterSpec;
import java.security.spec.PKCS8EncodedKeySpec;
import java.util.Arrays;
import java.util.Optional;

/** An Ed25519 private key (RFC 8032) and the public key that belongs to it. */
public final class SigningKey {
  private static final String PLAIN = "PRIVATE KEY";
  private static final String ENCRYPTED = "ENCRYPTED PRIVATE KEY";

  private final PrivateKey secret;
  private final VerifyingKey verifyingKey;

  private SigningKey(PrivateKey secret, VerifyingKey verifyingKey) {
    this.secret = secret;
    this.verifyingKey = verifyingKey;
  }

  /** A new key from the platform's strong random source. */
  public static SigningKey generate() {
    try {
      KeyPairGenerator generator = KeyPairGenerator.getInstance("Ed25519");
      return of(generator.generateKeyPair());
    } catch (GeneralSecurityException | KeyException e) {
      throw new IllegalStateException("this Java platform makes no Ed25519 keys", e);
    }
  }

  /**
   * Reads a private key in PKCS#8 PEM (RFC 8410), not encrypted.
   *
   * @throws KeyException if the text is anything else
   */
  static SigningKey fromPem(String text) throws KeyException {
    return fromDer(
        Pem.read(PLAIN, text)
            .orElseThrow(() -> new KeyException("is not a PKCS#8 PEM private key")));
  }

  /**
   * Reads an encrypted private key in PKCS#8 PEM.
   *
   * @throws KeyException if the text is anything else, or the passphrase is wrong
   */
  static SigningKey fromPem(String text, Passphrase passphrase) throws KeyException {
    byte[] encrypted =
        Pem.read(ENCRYPTED, text)
            .orElseThrow(() -> new KeyException("is not an encrypted PKCS#8 PEM private key"));
    byte[] der = Pbes2.decrypt(encrypted, passphrase);
    try {
      return fromDer(der);
    } catch (KeyException e) {
      throw new KeyException("the passphrase is wrong, or it is not an Ed25519 private key");
    } finally {
      Arrays.fill(der, (byte) 0);
    }
  }

  static boolean isEncrypted(String text) {
    return Pem.read(ENCRYPTED, text).isPresent();
  }

  private static SigningKey fromDer(byte[] der) throws KeyException {
    try {
      PrivateKey key =
          KeyFactory.getInstance("Ed25519").generatePrivate(new PKCS8EncodedKeySpec(der));
      byte[] seed = ((EdECPrivateKey) key).getBytes().orElseThrow(GeneralSecurityException::new);
      return of(pair(seed));
    } catch (GeneralSecurityException e) {
      throw new KeyException("is not an Ed25519 private key");
    }
  }

  /** The public half. */
  public VerifyingKey verifyingKey() {
    return verifyingKey;
  }

  /** The private key in PKCS#8 PEM; to be written nowhere but into the key file. */
  String pem() {
    return Pem.write(PLAIN, secret.getEncoded());
  }

  /** The same, encrypted if there is a passphrase. */
  String pem(Optional<Passphrase> passphrase) {
    return passphrase
        .map(p -> Pem.write(ENCRYPTED, Pbes2.encrypt(secret.getEncoded(), p)))
        .orElseGet(this::pem);
  }

  byte[] sign(byte[] message) {
    try {
      Signature engine = Signature.getInstance("Ed25519");
      engine.initSign(secret);
      engine.update(message);
      return engine.sign();
    } catch (GeneralSecurityException e) {
      throw new IllegalStateException("this Java platform does not sign with Ed25519", e);
    }
  }

  @Override
  public String toString() {
    return "private key of " + verifyingKey;
  }

  private static SigningKey of(KeyPair pair) throws KeyException {
    byte[] spki = pair.getPublic().getEncoded();
    byte[] raw = Arrays.copyOfRange(spki, spki.length - VerifyingKey.LENGTH, spki.length);
    return new SigningKey(pair.getPrivate(), VerifyingKey.of(raw));
  }

  /**
   * The pair of a seed. The JDK offers no way from a private key to its public one, but its
   * generator takes the 32 bytes it is given by the random source for the seed.
   */
  private static KeyPair pair(byte[] seed) throws GeneralSecurityException, KeyException {
    KeyPairGenerator generator = KeyPairGenerator.getInstance("Ed25519");
    generator.initialize(NamedParameterSpec.ED25519, new Replay(seed));
    KeyPair pair = generator.generateKeyPair();
    byte[] used = ((EdECPrivateKey) pair.getPrivate()).getBytes().orElse(new byte[0]);
    if (!Arrays.equals(used, seed)) {
      throw new KeyException("cannot be used: this Java platform gives no public key for it");
    }
    return pair;
  }

  private static final class Replay extends SecureRandom {
    private static final long serialVersionUID = 1L;
    private final byte[] seed;

    Replay(byte[] seed) {
      super();
      this.seed = seed.clone();
    }

    @Override
    public void nextBytes(byte[] bytes) {
      System.arraycopy(seed, 0, bytes, 0, bytes.length);
    }
  }
}
