package org.thumbseal.seal;

import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;
import java.nio.charset.StandardCharsets;
import java.security.DigestInputStream;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.HexFormat;

/** SHA-256 (FIPS 180-4), as 64 lower-case hexadecimal digits. */
public final class Sha256 {
  /** Stands for the digest of the document before the first. */
  public static final String ZEROS = "0".repeat(64);

  private Sha256() {}

  /** The digest of these bytes. */
  public static String hex(byte[] bytes) {
    return HexFormat.of().formatHex(digest(bytes));
  }

  /** The digest of everything left in the stream, in constant memory. */
  public static String hex(InputStream in) throws IOException {
    return copy(in, OutputStream.nullOutputStream());
  }

  /** Copies the rest of the stream and gives the digest of what was copied. */
  public static String copy(InputStream in, OutputStream out) throws IOException {
    DigestInputStream digesting = new DigestInputStream(in, engine());
    digesting.transferTo(out);
    return HexFormat.of().formatHex(digesting.getMessageDigest().digest());
  }

  static byte[] digest(byte[] bytes) {
    return engine().digest(bytes);
  }

  static byte[] digest(String ascii) {
    return digest(ascii.getBytes(StandardCharsets.US_ASCII));
  }

  private static MessageDigest engine() {
    try {
      return MessageDigest.getInstance("SHA-256");
    } catch (NoSuchAlgorithmException e) {
      throw new IllegalStateException("every Java platform has SHA-256", e);
    }
  }
}
