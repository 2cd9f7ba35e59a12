package org.thumbseal.wire;

import org.thumbseal.wire.Decoded.Good;
import org.thumbseal.wire.Decoded.Rejected;

/**
 * Turns one line of wire protocol 1, without its end, into a record or the cause of its rejection.
 *
 * <p>A line is a text of one-byte characters. Nothing that comes over a wire makes it throw.
 */
public final class LineDecoder {
  /** Longest line in bytes, its end not counted. */
  public static final int LONGEST_LINE = 96;

  private static final int TAIL = 5;

  private LineDecoder() {}

  /** Decodes one line. */
  public static Decoded decode(String line) {
    if (line.length() > LONGEST_LINE) {
      return new Rejected(RejectCause.TOO_LONG);
    }
    int star = line.length() - TAIL;
    if (star < 0 || line.charAt(star) != '*' || !isUpperHex(line, star + 1)) {
      return new Rejected(RejectCause.NO_CHECKSUM);
    }
    return decodeBody(line.substring(0, star), line.substring(star + 1));
  }

  private static Decoded decodeBody(String body, String checksum) {
    if (!Crc16.hex(Crc16.of(body)).equals(checksum)) {
      return new Rejected(RejectCause.WRONG_CHECKSUM);
    }
    return BodyParser.parse(body)
        .<Decoded>map(Good::new)
        .orElseGet(() -> new Rejected(RejectCause.MALFORMED));
  }

  private static boolean isUpperHex(String line, int from) {
    // Loops here and in the parser: with streams and patterns this was half of a busy host's work.
    boolean hex = true;
    for (int i = from; i < line.length(); i++) {
      char c = line.charAt(i);
      hex &= (c >= '0' && c <= '9') || (c >= 'A' && c <= 'F');
    }
    return hex;
  }
}
