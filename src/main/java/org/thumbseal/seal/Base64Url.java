package org.thumbseal.seal;

import java.util.Base64;
import java.util.Optional;

/** Base64url without padding (RFC 7515 section 2), one spelling for each value. */
final class Base64Url {
  private Base64Url() {}

  static String encode(byte[] bytes) {
    return Base64.getUrlEncoder().withoutPadding().encodeToString(bytes);
  }

  /** Empty unless the text is the very one that {@link #encode} gives. */
  static Optional<byte[]> decode(String text) {
    try {
      byte[] bytes = Base64.getUrlDecoder().decode(text);
      // The decoder drops stray bits of the last character and takes padding: both spell it anew.
      return encode(bytes).equals(text) ? Optional.of(bytes) : Optional.empty();
    } catch (IllegalArgumentException e) {
      return Optional.empty();
    }
  }

  /** As {@link #decode}, and of exactly this many bytes. */
  static Optional<byte[]> decode(String text, int length) {
    return decode(text).filter(b -> b.length == length);
  }
}
