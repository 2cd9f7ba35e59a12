package org.thumbseal.record;

import java.util.UUID;

/**
 * Name of a result: the same for the same evidence, so that importing it twice is harmless.
 *
 * <p>A UUID of version 8 (RFC 9562) made of the first 128 bits of the capture's SHA-256, to which
 * the number of the test within the capture is added.
 */
public final class ResultId {
  private static final long VERSION_MASK = 0xFFFF_FFFF_FFFF_0FFFL;
  private static final long VERSION_8 = 0x8000L;
  private static final long VARIANT_MASK = 0x3FFF_FFFF_FFFF_FFFFL;
  private static final long VARIANT = 0x8000_0000_0000_0000L;

  private ResultId() {}

  /**
   * The id of a test.
   *
   * @param sha256 of the capture, 64 hexadecimal digits
   * @param ordinal number of the test within the capture, from 1; of a start without a test, from 0
   *     down
   */
  public static String of(String sha256, int ordinal) {
    long high = Long.parseUnsignedLong(sha256.substring(0, 16), 16);
    long low = Long.parseUnsignedLong(sha256.substring(16, 32), 16);
    long mixed = high + 0x9E37_79B9_7F4A_7C15L * (ordinal - 1);
    return new UUID((mixed & VERSION_MASK) | VERSION_8, (low & VARIANT_MASK) | VARIANT).toString();
  }
}
