package org.thumbseal.capture;

import java.nio.ByteBuffer;
import java.nio.charset.CharacterCodingException;
import java.nio.charset.StandardCharsets;

/**
 * The text of a table and the character between its fields.
 *
 * @param text without byte order mark
 * @param separator tab, semicolon or comma
 */
record TableText(String text, char separator) {
  private static final char BYTE_ORDER_MARK = '\uFEFF';
  private static final String SEPARATORS = "\t;,";

  /**
   * Finds out encoding and separator.
   *
   * @throws CaptureFormatException if these bytes are no text, or hold nothing
   */
  static TableText of(byte[] bytes) throws CaptureFormatException {
    String text = decode(bytes);
    if (text.indexOf('\0') >= 0) {
      throw new CaptureFormatException("not a table: the file is not text");
    }
    int from = text.indexOf(BYTE_ORDER_MARK) == 0 ? 1 : 0;
    String plain = text.substring(from);
    if (plain.isBlank()) {
      throw new CaptureFormatException("not a table: the file is empty");
    }
    return new TableText(plain, separator(plain));
  }

  RecordCursor records() {
    return new RecordCursor(this);
  }

  private static String decode(byte[] bytes) {
    int mark = bytes.length < 2 ? 0 : (bytes[0] & 0xFF) << 8 | (bytes[1] & 0xFF);
    if (mark == BYTE_ORDER_MARK || mark == Character.reverseBytes(BYTE_ORDER_MARK)) {
      return new String(bytes, StandardCharsets.UTF_16);
    }
    try {
      return StandardCharsets.UTF_8.newDecoder().decode(ByteBuffer.wrap(bytes)).toString();
    } catch (CharacterCodingException e) {
      return new String(bytes, StandardCharsets.ISO_8859_1);
    }
  }

  /** A tab or semicolon in the first line is never part of a number; a comma may be. */
  private static char separator(String text) {
    String first =
        text.lines()
            .filter(line -> !line.isBlank() && !line.startsWith("#"))
            .findFirst()
            .orElse("")
            .replaceAll("\"[^\"]*\"", "");
    return (char) SEPARATORS.chars().filter(c -> first.indexOf(c) >= 0).findFirst().orElse(',');
  }
}
