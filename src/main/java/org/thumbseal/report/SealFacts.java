package org.thumbseal.report;

import java.util.Base64;
import java.util.HexFormat;
import java.util.Locale;
import java.util.Optional;

/**
 * What is known of the seal of a document.
 *
 * @param state what its check came to
 * @param signer whose seal it is, by name or fingerprint; empty where that is not known
 * @param remark what is wrong or could not be checked; may be empty
 * @param kid RFC 7638 thumbprint of the key that is named in it
 * @param digest SHA-256 of its canonical form with the signature, 64 hexadecimal digits
 */
public record SealFacts(
    State state, String signer, String remark, Optional<String> kid, Optional<String> digest) {
  /** No seal at all. */
  public static final SealFacts NONE =
      new SealFacts(State.NONE, "", "", Optional.empty(), Optional.empty());

  private static final int FINGERPRINT_BYTES = 10;
  private static final int DIGEST_DIGITS = 16;

  /** What the check of a seal came to. */
  public enum State {
    TRUSTED,
    UNKNOWN,
    CHAIN,
    BROKEN,
    NONE;

    String code() {
      return name().toLowerCase(Locale.ROOT);
    }
  }

  /** The beginning of the digest in groups of four, to be compared by eye. */
  Optional<String> shortDigest() {
    return digest.map(hex -> grouped(hex.substring(0, Math.min(DIGEST_DIGITS, hex.length()))));
  }

  /** The beginning of the thumbprint as {@code key show} prints it. */
  Optional<String> fingerprint() {
    return kid.flatMap(SealFacts::decoded)
        .filter(bytes -> bytes.length() >= 2 * FINGERPRINT_BYTES)
        .map(hex -> grouped(hex.substring(0, 2 * FINGERPRINT_BYTES)).replace(' ', '-'))
        .map(hex -> hex.toUpperCase(Locale.ROOT));
  }

  private static Optional<String> decoded(String thumbprint) {
    try {
      return Optional.of(HexFormat.of().formatHex(Base64.getUrlDecoder().decode(thumbprint)));
    } catch (IllegalArgumentException e) {
      return Optional.empty();
    }
  }

  private static String grouped(String hex) {
    return hex.replaceAll("(.{4})(?=.)", "$1 ");
  }
}
