package org.thumbseal.wire;

import java.util.Optional;

/** How a sensor writes its lines; nothing that comes over a wire makes it throw. */
@FunctionalInterface
public interface LineFormat {
  /** Wire protocol 1: lines with a checksum. */
  LineFormat PROTOCOL_1 = LineDecoder::decode;

  /** Decodes one line without its end, a text of one-byte characters. */
  Decoded decode(String line);

  /** What is known of lines without a checksum; empty for the wire protocol. */
  default Optional<PlainLines> plain() {
    return Optional.empty();
  }
}
