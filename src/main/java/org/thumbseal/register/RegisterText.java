package org.thumbseal.register;

import java.nio.ByteBuffer;
import java.nio.CharBuffer;
import java.nio.charset.CharsetDecoder;
import java.nio.charset.CoderResult;
import java.nio.charset.StandardCharsets;
import java.util.Optional;
import org.thumbseal.register.RegisterMistake.Kind;

/** The bytes of a register as text, if they are such. */
final class RegisterText {
  private static final String SAVE_AS = "save it as CSV UTF-8";
  private static final char BYTE_ORDER_MARK = '\uFEFF';

  private RegisterText() {}

  /** The text without byte-order mark; empty, and a mistake, where the bytes are none. */
  static Optional<String> of(byte[] bytes, Mistakes mistakes) {
    if (isWorkbook(bytes)) {
      mistakes.add(Kind.NOT_TEXT, "is a workbook of a spreadsheet, not CSV: " + SAVE_AS);
      return Optional.empty();
    } else if (isUtf16(bytes)) {
      mistakes.add(Kind.UTF_16, "is UTF-16 text: " + SAVE_AS);
      return Optional.empty();
    }
    return decode(bytes, mistakes).filter(text -> isFilled(text, mistakes));
  }

  private static boolean isFilled(String text, Mistakes mistakes) {
    if (text.isBlank()) {
      mistakes.add(
          Kind.EMPTY_FILE, "is empty; 'thumbseal register --template' prints one to begin with");
    }
    return !text.isBlank();
  }

  /** Workbooks are ZIP archives; those of old begin with D0 CF (both from memory). */
  private static boolean isWorkbook(byte[] bytes) {
    return begins(bytes, 'P', 'K', 3, 4) || begins(bytes, 0xD0, 0xCF, 0x11, 0xE0);
  }

  /** By its mark; without one, a first character of ASCII has its zero beside it. */
  private static boolean isUtf16(byte[] bytes) {
    return begins(bytes, 0xFF, 0xFE)
        || begins(bytes, 0xFE, 0xFF)
        || (bytes.length > 1 && (bytes[0] == 0) != (bytes[1] == 0));
  }

  private static boolean begins(byte[] bytes, int... with) {
    boolean same = bytes.length >= with.length;
    for (int i = 0; same && i < with.length; i++) {
      same = (bytes[i] & 0xFF) == with[i];
    }
    return same;
  }

  private static Optional<String> decode(byte[] bytes, Mistakes mistakes) {
    CharsetDecoder decoder = StandardCharsets.UTF_8.newDecoder();
    ByteBuffer in = ByteBuffer.wrap(bytes);
    CharBuffer out = CharBuffer.allocate(bytes.length + 1);
    CoderResult result = decoder.decode(in, out, true);
    String text = out.flip().toString();
    String plain = text.indexOf(BYTE_ORDER_MARK) == 0 ? text.substring(1) : text;
    if (result.isError()) {
      notUtf8(plain, in.get(in.position()) & 0xFF, mistakes);
      return Optional.empty();
    }
    return Optional.of(plain);
  }

  private static void notUtf8(String before, int bad, Mistakes mistakes) {
    Separator separator = Separator.of(firstLine(before));
    Quoting.Slip end = Quoting.end(before, separator.sign(), Kind.NOT_UTF_8);
    Header header = Header.of(Rows.of(before, separator), new Mistakes());
    mistakes.add(
        header.place(end.row(), end.column()),
        Kind.NOT_UTF_8,
        String.format(
            java.util.Locale.ROOT,
            "is not UTF-8 from here on (byte %02X), rather Windows-1252 or another old code page:"
                + " open it in the spreadsheet and %s",
            bad,
            SAVE_AS));
  }

  /** The header line, as far as its separators go. */
  static String firstLine(String text) {
    return text.split("[\\r\\n]", 2)[0];
  }
}
