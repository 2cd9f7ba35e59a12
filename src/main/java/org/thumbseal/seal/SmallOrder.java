package org.thumbseal.seal;

import java.util.HexFormat;
import java.util.Set;

/**
 * The points of edwards25519 whose order divides 8. A key that is one of them accepts the same
 * signature for many messages, and the JDK takes it without a word. The five values of y are 0, 1,
 * -1 and the two of order 8 (from memory; the test shows of each that it is such a point).
 */
final class SmallOrder {
  private static final String ORDER_8 =
      "26e8958fc2b227b045c3f489f2ef98f0d5dfac05d3c63339b13802886d53fc05";
  private static final String ORDER_8_NEGATED =
      "c7176a703d4dd84fba3c0b760d10670f2a2053fa2c39ccc64ec7fd7792ac037a";

  private static final Set<String> Y =
      Set.of(
          "00".repeat(32),
          "01" + "00".repeat(31),
          "ec" + "ff".repeat(30) + "7f",
          ORDER_8,
          ORDER_8_NEGATED);

  private SmallOrder() {}

  static boolean contains(byte[] encoded) {
    byte[] y = encoded.clone();
    y[y.length - 1] &= 0x7f;
    return Y.contains(HexFormat.of().formatHex(y));
  }
}
