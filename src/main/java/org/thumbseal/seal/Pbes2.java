package org.thumbseal.seal;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.security.AlgorithmParameters;
import java.security.GeneralSecurityException;
import java.security.SecureRandom;
import java.util.Arrays;
import java.util.HexFormat;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import javax.crypto.Cipher;
import javax.crypto.EncryptedPrivateKeyInfo;
import javax.crypto.SecretKeyFactory;
import javax.crypto.spec.IvParameterSpec;
import javax.crypto.spec.PBEKeySpec;
import javax.crypto.spec.PBEParameterSpec;
import javax.crypto.spec.SecretKeySpec;

/**
 * Encrypted private keys, PKCS#8 EncryptedPrivateKeyInfo (RFC 5958 section 3), by PBES2 (RFC 8018
 * section 6.2). Written are PBKDF2 with HMAC-SHA-256 and AES-256-CBC; any HMAC-SHA and AES-128 are
 * read too. PBKDF2 is called by itself, because the JDK's PBES2 cipher takes ASCII alone.
 */
final class Pbes2 {
  /** OWASP Password Storage Cheat Sheet, 2023, for PBKDF2-HMAC-SHA256. */
  static final int ITERATIONS = 600_000;

  /** Some seconds; a file that asks for more is made to keep us busy. */
  static final int MOST_ITERATIONS = 2_000_000;

  /** RFC 8018 section 4.1 asks for at least 8 bytes, NIST SP 800-132 section 5.1 for 16. */
  private static final int SALT_LENGTH = 16;

  private static final int BLOCK_LENGTH = 16;
  private static final String WRITTEN = "PBEWithHmacSHA256AndAES_256";

  /** The JDK's names of PBES2 with these algorithms. */
  private static final Pattern NAME = Pattern.compile("PBEWith(HmacSHA[0-9/]+)AndAES_(128|256)");

  /** Object identifier 1.2.840.113549.1.5.13, id-PBES2, with tag and length. */
  private static final byte[] OID = HexFormat.of().parseHex("06092a864886f70d01050d");

  private static final int SEQUENCE = 0x30;
  private static final int OCTET_STRING = 0x04;

  private Pbes2() {}

  /** The encrypted form of this content. */
  static byte[] encrypt(byte[] content, Passphrase passphrase) {
    return encrypt(content, passphrase, ITERATIONS);
  }

  static byte[] encrypt(byte[] content, Passphrase passphrase, int iterations) {
    byte[] salt = random(SALT_LENGTH);
    byte[] vector = random(BLOCK_LENGTH);
    try {
      AlgorithmParameters parameters = AlgorithmParameters.getInstance(WRITTEN);
      parameters.init(new PBEParameterSpec(salt, iterations, new IvParameterSpec(vector)));
      byte[] hidden = cipher(Cipher.ENCRYPT_MODE, parameters, passphrase).doFinal(content);
      byte[] algorithm = der(SEQUENCE, OID, parameters.getEncoded());
      return der(SEQUENCE, algorithm, der(OCTET_STRING, hidden));
    } catch (GeneralSecurityException | IOException | KeyException e) {
      throw new IllegalStateException("this Java platform has no PBES2", e);
    }
  }

  /**
   * The content of the encrypted form.
   *
   * @throws KeyException if it is another form, or the passphrase is wrong; a wrong passphrase may
   *     also, once in 256 times, give content that is none
   */
  static byte[] decrypt(byte[] encoded, Passphrase passphrase) throws KeyException {
    try {
      EncryptedPrivateKeyInfo info = new EncryptedPrivateKeyInfo(encoded);
      Cipher cipher = cipher(Cipher.DECRYPT_MODE, info.getAlgParameters(), passphrase);
      return cipher.doFinal(info.getEncryptedData());
    } catch (IOException e) {
      throw notTaken();
    } catch (GeneralSecurityException e) {
      throw new KeyException("the passphrase is wrong, or the file is damaged");
    }
  }

  private static Cipher cipher(int mode, AlgorithmParameters parameters, Passphrase passphrase)
      throws GeneralSecurityException, KeyException {
    Matcher name = NAME.matcher(String.valueOf(parameters));
    if (!name.matches()) {
      throw notTaken();
    }
    PBEParameterSpec spec = parameters.getParameterSpec(PBEParameterSpec.class);
    if (spec.getIterationCount() < 1 || spec.getSalt().length == 0) {
      throw notTaken();
    }
    if (spec.getIterationCount() > MOST_ITERATIONS) {
      throw new KeyException(
          "asks for more than "
              + MOST_ITERATIONS
              + " rounds of PBKDF2; encrypt it anew with fewer");
    }
    Cipher cipher = Cipher.getInstance("AES/CBC/PKCS5Padding");
    int bits = Integer.parseInt(name.group(2));
    cipher.init(
        mode, key("PBKDF2With" + name.group(1), passphrase, spec, bits), spec.getParameterSpec());
    return cipher;
  }

  private static SecretKeySpec key(
      String function, Passphrase passphrase, PBEParameterSpec spec, int bits)
      throws GeneralSecurityException {
    char[] characters = passphrase.characters();
    PBEKeySpec wanted = new PBEKeySpec(characters, spec.getSalt(), spec.getIterationCount(), bits);
    try {
      byte[] key = SecretKeyFactory.getInstance(function).generateSecret(wanted).getEncoded();
      return new SecretKeySpec(key, "AES");
    } finally {
      wanted.clearPassword();
      Arrays.fill(characters, '\0');
    }
  }

  private static byte[] random(int length) {
    byte[] bytes = new byte[length];
    new SecureRandom().nextBytes(bytes);
    return bytes;
  }

  private static KeyException notTaken() {
    return new KeyException(
        "is damaged, or encrypted in a way that is not taken here; encrypt it anew with: openssl"
            + " pkcs8 -topk8 -v2 aes-256-cbc");
  }

  /** Tag, length and content of ITU-T X.690; no more than 65535 bytes. */
  private static byte[] der(int tag, byte[]... parts) {
    ByteArrayOutputStream content = new ByteArrayOutputStream();
    Arrays.stream(parts).forEach(content::writeBytes);
    ByteArrayOutputStream out = new ByteArrayOutputStream();
    out.write(tag);
    if (content.size() > 0xff) {
      out.writeBytes(new byte[] {(byte) 0x82, (byte) (content.size() >> 8)});
    } else if (content.size() > 0x7f) {
      out.write(0x81);
    }
    out.write(content.size());
    out.writeBytes(content.toByteArray());
    return out.toByteArray();
  }
}
