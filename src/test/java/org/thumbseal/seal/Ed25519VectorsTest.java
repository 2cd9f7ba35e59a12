package org.thumbseal.seal;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.math.BigInteger;
import java.util.Arrays;
import java.util.HexFormat;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** Signing and verifying against RFC 8032, and where its rules are easily missed. */
class Ed25519VectorsTest {
  private static final HexFormat HEX = HexFormat.of();

  /** PKCS#8 of an Ed25519 key up to the seed: RFC 8410 section 7. */
  private static final String PKCS8_PREFIX = "302e020100300506032b657004220420";

  /** RFC 8032 section 5.1: the order of the base point. */
  private static final BigInteger L =
      BigInteger.TWO.pow(252).add(new BigInteger("27742317777372353535851937790883648493"));

  /** RFC 8032 section 7.1, tests 1, 2, 3 and SHA(abc): seed, public key, message, signature. */
  @ParameterizedTest
  @CsvSource({
    "9d61b19deffd5a60ba844af492ec2cc44449c5697b326919703bac031cae7f60,"
        + "d75a980182b10ab7d54bfed3c964073a0ee172f3daa62325af021a68f707511a,"
        + "'',"
        + "e5564300c360ac729086e2cc806e828a84877f1eb8e5d974d873e06522490155"
        + "5fb8821590a33bacc61e39701cf9b46bd25bf5f0595bbe24655141438e7a100b",
    "4ccd089b28ff96da9db6c346ec114e0f5b8a319f35aba624da8cf6ed4fb8a6fb,"
        + "3d4017c3e843895a92b70aa74d1b7ebc9c982ccf2ec4968cc0cd55f12af4660c,"
        + "72,"
        + "92a009a9f0d4cab8720e820b5f642540a2b27b5416503f8fb3762223ebdb69da"
        + "085ac1e43e15996e458f3613d0f11d8c387b2eaeb4302aeeb00d291612bb0c00",
    "c5aa8df43f9f837bedb7442f31dcb7b166d38535076f094b85ce3a2e0b4458f7,"
        + "fc51cd8e6218a1a38da47ed00230f0580816ed13ba3303ac5deb911548908025,"
        + "af82,"
        + "6291d657deec24024827e69c3abe01a30ce548a284743a445e3680d7db5ac3ac"
        + "18ff9b538d16f290ae67f760984dc6594a7c15e9716ed28dc027beceea1ec40a",
    "833fe62409237b9d62ec77587520911e9a759cec1d19755b7da901b96dca3d42,"
        + "ec172b93ad5e563bf4932c70e1245034c35467ef2efd4d64ebf819683467e2bf,"
        + "ddaf35a193617abacc417349ae20413112e6fa4e89a97ea20a9eeee64b55d39a"
        + "2192992a274fc1a836ba3c23a3feebbd454d4423643ce80e2a9ac94fa54ca49f,"
        + "dc2a4459e7369633a52b1bf277839a00201009a3efbf3ecb69bea2186c26b589"
        + "09351fc9ac90b3ecfdfbc7c66431e0303dca179c138ac17ad9bef1177331a704"
  })
  void rfc8032(String seed, String publicKey, String message, String signature) throws Exception {
    SigningKey key = key(seed);

    assertThat(key.verifyingKey()).isEqualTo(VerifyingKey.of(HEX.parseHex(publicKey)));
    assertThat(key.sign(HEX.parseHex(message))).isEqualTo(HEX.parseHex(signature));
    assertThat(key.verifyingKey().verifies(HEX.parseHex(message), HEX.parseHex(signature)))
        .isTrue();
  }

  /** RFC 8032 section 5.1.7 step 1: S must be below L, or each signature would have a twin. */
  @Test
  void theTwinOfASignatureIsRefused() {
    SigningKey key = SigningKey.generate();
    byte[] message = {1, 2, 3};
    byte[] signature = key.sign(message);
    byte[] twin = withS(signature, s(signature).add(L));

    assertThat(key.verifyingKey().verifies(message, signature)).isTrue();
    assertThat(key.verifyingKey().verifies(message, twin)).isFalse();
    assertThat(key.verifyingKey().verifies(message, Arrays.copyOf(signature, 63))).isFalse();
  }

  private static BigInteger s(byte[] signature) {
    return new BigInteger(1, reversed(Arrays.copyOfRange(signature, 32, 64)));
  }

  private static byte[] withS(byte[] signature, BigInteger s) {
    byte[] twin = Arrays.copyOf(signature, 64);
    byte[] little = reversed(s.toByteArray());
    System.arraycopy(little, 0, twin, 32, Math.min(32, little.length));
    return twin;
  }

  private static byte[] reversed(byte[] bytes) {
    byte[] reversed = new byte[bytes.length];
    for (int i = 0; i < bytes.length; i++) {
      reversed[i] = bytes[bytes.length - 1 - i];
    }
    return reversed;
  }

  /**
   * With a key of order n, about one message in n is signed by R = 1, S = 0; the JDK accepts that.
   * Each encoding is shown to be such a key by the JDK's own verdict, and refused by us.
   */
  @ParameterizedTest
  @ValueSource(
      strings = {
        "0100000000000000000000000000000000000000000000000000000000000000",
        "ecffffffffffffffffffffffffffffffffffffffffffffffffffffffffffff7f",
        "0000000000000000000000000000000000000000000000000000000000000000",
        "0000000000000000000000000000000000000000000000000000000000000080",
        "26e8958fc2b227b045c3f489f2ef98f0d5dfac05d3c63339b13802886d53fc05",
        "26e8958fc2b227b045c3f489f2ef98f0d5dfac05d3c63339b13802886d53fc85",
        "c7176a703d4dd84fba3c0b760d10670f2a2053fa2c39ccc64ec7fd7792ac037a",
        "c7176a703d4dd84fba3c0b760d10670f2a2053fa2c39ccc64ec7fd7792ac03fa"
      })
  void keysWithWhichAnybodyCanSignAreRefused(String encoded) throws Exception {
    assertThat(forgedByNobody(encoded)).isPositive();
    assertThatThrownBy(() -> VerifyingKey.of(HEX.parseHex(encoded)))
        .isInstanceOf(KeyException.class)
        .hasMessageContaining("small order");
  }

  /** How many of 200 messages bear a signature that needs no private key. */
  private static long forgedByNobody(String encoded) throws Exception {
    var key =
        java.security.KeyFactory.getInstance("Ed25519")
            .generatePublic(
                new java.security.spec.X509EncodedKeySpec(
                    HEX.parseHex("302a300506032b6570032100" + encoded)));
    byte[] signature = new byte[64];
    signature[0] = 1;
    long forged = 0;
    for (int i = 0; i < 200; i++) {
      var engine = java.security.Signature.getInstance("Ed25519");
      engine.initVerify(key);
      engine.update((byte) i);
      forged += engine.verify(signature) ? 1 : 0;
    }
    return forged;
  }

  /** RFC 8032 section 5.1.3: y must be below p, and on the curve. */
  @ParameterizedTest
  @ValueSource(
      strings = {
        "ffffffffffffffffffffffffffffffffffffffffffffffffffffffffffffffff",
        "0200000000000000000000000000000000000000000000000000000000000000"
      })
  void bytesThatAreNoPointAreRefused(String encoded) {
    assertThatThrownBy(() -> VerifyingKey.of(HEX.parseHex(encoded)))
        .isInstanceOf(KeyException.class);
  }

  private static SigningKey key(String seed) throws KeyException {
    return SigningKey.fromPem(Pem.write("PRIVATE KEY", HEX.parseHex(PKCS8_PREFIX + seed)));
  }
}
