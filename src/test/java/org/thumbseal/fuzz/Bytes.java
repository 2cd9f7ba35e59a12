package org.thumbseal.fuzz;

import java.io.ByteArrayOutputStream;
import java.nio.charset.StandardCharsets;
import java.util.Arrays;
import java.util.HexFormat;

/** Cuts and joins of byte arrays. */
final class Bytes {
  private static final int SHOWN = 6_000;

  private Bytes() {}

  static byte[] join(byte[]... parts) {
    ByteArrayOutputStream out = new ByteArrayOutputStream();
    for (byte[] part : parts) {
      out.writeBytes(part);
    }
    return out.toByteArray();
  }

  static byte[] head(byte[] all, int end) {
    return Arrays.copyOf(all, Math.min(end, all.length));
  }

  static byte[] tail(byte[] all, int from) {
    return Arrays.copyOfRange(all, Math.min(from, all.length), all.length);
  }

  /** The bytes with those from {@code from} to before {@code to} replaced. */
  static byte[] replaced(byte[] all, int from, int to, byte[] by) {
    return join(head(all, from), by, tail(all, to));
  }

  static byte[] of(String text) {
    return text.getBytes(StandardCharsets.UTF_8);
  }

  /** One character a byte, as lines of the wire are held. */
  static String latin(byte[] bytes) {
    return new String(bytes, StandardCharsets.ISO_8859_1);
  }

  static byte[] latin(String text) {
    return text.getBytes(StandardCharsets.ISO_8859_1);
  }

  /** For a failure message: hexadecimal, cut where it is long. */
  static String shown(byte[] bytes) {
    String hex = HexFormat.of().formatHex(head(bytes, SHOWN));
    return bytes.length + " bytes: " + hex + (bytes.length > SHOWN ? "..." : "");
  }
}
