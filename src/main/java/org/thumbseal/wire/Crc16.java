package org.thumbseal.wire;

/**
 * CRC-16/IBM-3740: polynomial 1021, start FFFF, not reflected, no final inversion.
 *
 * <p>Check value of the CRC catalogue: {@code "123456789"} gives 29B1.
 */
public final class Crc16 {
  private static final int POLYNOMIAL = 0x1021;
  private static final int START = 0xFFFF;
  private static final int[] TABLE = table();

  private Crc16() {}

  /** The checksum, 0 to 65535, of a text of one-byte characters (U+0000 to U+00FF). */
  public static int of(CharSequence bytes) {
    int crc = START;
    for (int i = 0; i < bytes.length(); i++) {
      crc = next(crc, bytes.charAt(i));
    }
    return crc;
  }

  /** A body with its checksum as it goes over the wire, without the line end. */
  public static String seal(String body) {
    return body + '*' + hex(of(body));
  }

  /** Four upper-case hexadecimal digits. */
  static String hex(int crc) {
    String digits = Integer.toHexString(0x10000 | crc).substring(1);
    return digits.toUpperCase(java.util.Locale.ROOT);
  }

  private static int next(int crc, int octet) {
    return ((crc << 8) & 0xFFFF) ^ TABLE[((crc >> 8) ^ octet) & 0xFF];
  }

  /** What each value of the upper byte leaves behind after eight shifts. */
  private static int[] table() {
    int[] table = new int[256];
    for (int i = 0; i < table.length; i++) {
      int shifted = i << 8;
      for (int bit = 0; bit < 8; bit++) {
        shifted = (shifted & 0x8000) != 0 ? (shifted << 1) ^ POLYNOMIAL : shifted << 1;
      }
      table[i] = shifted & 0xFFFF;
    }
    return table;
  }
}
