package org.thumbseal.json;

import java.math.BigDecimal;
import java.math.RoundingMode;

/** Numbers as documents carry them: rounded to what they mean, in their shortest form. */
public final class Decimals {
  private static final int FINEST = 15;

  private Decimals() {}

  /**
   * Rounds the exact value of the double, half to even, and drops zeros at the end, so that 7.4200
   * becomes 7.42 and 100.0 becomes 100. The same on every machine and in every locale.
   *
   * @param places decimal places kept, zero or more
   * @throws NumberFormatException if the value is infinite or not a number
   */
  public static BigDecimal round(double value, int places) {
    BigDecimal rounded =
        new BigDecimal(value).setScale(places, RoundingMode.HALF_EVEN).stripTrailingZeros();
    return rounded.scale() < 0 ? rounded.setScale(0, RoundingMode.UNNECESSARY) : rounded;
  }

  /**
   * Rounds to so many significant digits, and no finer than 1e-15: what is smaller is arithmetic.
   *
   * @param digits significant digits kept, one or more
   * @throws NumberFormatException if the value is infinite or not a number
   */
  public static BigDecimal significant(double value, int digits) {
    BigDecimal exact = new BigDecimal(value);
    int places = exact.scale() - exact.precision() + digits;
    return round(value, Math.min(FINEST, Math.max(0, places)));
  }
}
