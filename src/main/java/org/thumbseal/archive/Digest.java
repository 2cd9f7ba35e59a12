package org.thumbseal.archive;

/**
 * A SHA-256 digest in a third of the memory that its 64 digits take: there are hundreds of
 * thousands at once while a directory is checked.
 */
record Digest(long first, long second, long third, long fourth) {
  private static final int DIGITS = 16;
  private static final int RADIX = 16;

  /** The digest that is written with these 64 hexadecimal digits. */
  static Digest of(String hex) {
    return new Digest(part(hex, 0), part(hex, 1), part(hex, 2), part(hex, 3));
  }

  private static long part(String hex, int index) {
    return Long.parseUnsignedLong(hex, index * DIGITS, (index + 1) * DIGITS, RADIX);
  }
}
