package org.thumbseal.seal;

import java.nio.charset.StandardCharsets;
import java.util.Base64;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** Textual encoding of keys (RFC 7468), one block a file. */
final class Pem {
  private static final Base64.Encoder LINES =
      Base64.getMimeEncoder(64, "\n".getBytes(StandardCharsets.US_ASCII));
  private static final Pattern BLOCK =
      Pattern.compile("\\s*-----BEGIN ([A-Z ]+)-----([A-Za-z0-9+/=\\s]*)-----END \\1-----\\s*");

  private Pem() {}

  static String write(String label, byte[] der) {
    return "-----BEGIN "
        + label
        + "-----\n"
        + LINES.encodeToString(der)
        + "\n-----END "
        + label
        + "-----\n";
  }

  /** The content of the block, when the text is exactly one block with this label. */
  static Optional<byte[]> read(String label, String text) {
    Matcher block = BLOCK.matcher(text);
    if (!block.matches() || !block.group(1).equals(label)) {
      return Optional.empty();
    }
    try {
      return Optional.of(Base64.getMimeDecoder().decode(block.group(2)));
    } catch (IllegalArgumentException e) {
      return Optional.empty();
    }
  }
}
