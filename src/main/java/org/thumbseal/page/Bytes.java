package org.thumbseal.page;

import java.io.IOException;
import java.io.OutputStream;
import java.nio.charset.StandardCharsets;

/** Bytes that nobody changes. */
final class Bytes {
  private final byte[] bytes;

  private Bytes(byte[] bytes) {
    this.bytes = bytes;
  }

  /** The text in UTF-8. */
  static Bytes of(String text) {
    return new Bytes(text.getBytes(StandardCharsets.UTF_8));
  }

  int length() {
    return bytes.length;
  }

  void writeTo(OutputStream out) throws IOException {
    out.write(bytes);
  }
}
