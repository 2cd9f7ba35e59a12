package org.thumbseal.capture;

import java.util.Optional;

/**
 * One line received, as it stands in a capture file.
 *
 * @param hostMicros monotonic host clock, microseconds since the capture was started
 * @param text the line without its end, one character a byte (U+0000 to U+00FF)
 */
public record CaptureLine(long hostMicros, String text) {
  private static final int DECIMALS = 6;
  private static final String HEX = "0123456789ABCDEF";

  /**
   * Refuses what no file could give back.
   *
   * @throws IllegalArgumentException if the time is negative or a character is no byte
   */
  public CaptureLine {
    if (hostMicros < 0 || !isBytes(text)) {
      throw new IllegalArgumentException("not a line received: " + hostMicros + " us, " + text);
    }
  }

  private static boolean isBytes(String text) {
    boolean all = true;
    for (int i = 0; i < text.length(); i++) {
      all &= text.charAt(i) <= 0xFF;
    }
    return all;
  }

  /** The form in the file: seconds with 6 decimals, a space, the line with odd bytes escaped. */
  public String format() {
    StringBuilder out = new StringBuilder(text.length() + 16);
    out.append(hostMicros / 1_000_000).append('.');
    String fraction = Long.toString(1_000_000 + hostMicros % 1_000_000);
    return out.append(fraction, 1, fraction.length()).append(' ').append(escape(text)).toString();
  }

  /** Reads the form in the file; empty where it is not one. */
  public static Optional<CaptureLine> parse(String line) {
    int space = line.indexOf(' ');
    int dot = space - DECIMALS - 1;
    if (dot < 1 || dot > 10 || line.charAt(dot) != '.') {
      return Optional.empty();
    }
    String digits = line.substring(0, dot) + line.substring(dot + 1, space);
    return digits.chars().allMatch(c -> c >= '0' && c <= '9')
        ? unescape(line.substring(space + 1)).map(t -> new CaptureLine(Long.parseLong(digits), t))
        : Optional.empty();
  }

  private static String escape(String text) {
    StringBuilder out = new StringBuilder(text.length());
    for (int i = 0; i < text.length(); i++) {
      escape(out, text.charAt(i));
    }
    return out.toString();
  }

  private static void escape(StringBuilder out, int octet) {
    if (isPlain(octet)) {
      out.append((char) octet);
    } else {
      out.append("\\x").append(HEX.charAt(octet >> 4)).append(HEX.charAt(octet & 0xF));
    }
  }

  private static Optional<String> unescape(String text) {
    StringBuilder out = new StringBuilder(text.length());
    int next = 0;
    while (next < text.length()) {
      boolean plain = isPlain(text.charAt(next));
      int octet = plain ? text.charAt(next) : octetAt(text, next);
      if (octet < 0) {
        return Optional.empty();
      }
      out.append((char) octet);
      next += plain ? 1 : 4;
    }
    return Optional.of(out.toString());
  }

  private static boolean isPlain(int octet) {
    return octet >= 0x20 && octet <= 0x7E && octet != '\\';
  }

  private static int octetAt(String text, int backslash) {
    if (backslash + 3 >= text.length() || !text.startsWith("\\x", backslash)) {
      return -1;
    }
    int high = HEX.indexOf(text.charAt(backslash + 2));
    int low = HEX.indexOf(text.charAt(backslash + 3));
    return high < 0 || low < 0 ? -1 : high << 4 | low;
  }
}
