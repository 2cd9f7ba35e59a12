package org.thumbseal.simulate;

import java.math.BigDecimal;
import java.util.Locale;
import java.util.OptionalDouble;

/**
 * What a caller fixes; the rest is drawn from the seed so that the kind stays what it is called.
 *
 * @param litres jar volume, L, 0.3 to 5
 * @param altitude height above sea level, m
 * @param hertz sampling rate, Hz, 10 to 1000
 * @param idleSeconds length of the kind {@code idle}, s
 */
public record Conditions(
    OptionalDouble litres,
    OptionalDouble altitude,
    OptionalDouble hertz,
    OptionalDouble idleSeconds) {
  private static final OptionalDouble DRAWN = OptionalDouble.empty();

  /** Everything is drawn. */
  public static final Conditions NONE = new Conditions(DRAWN, DRAWN, DRAWN, DRAWN);

  /** Refuses values out of range, in words for a person. */
  public Conditions {
    within(litres, 0.3, 5, "jar volume", "L");
    within(altitude, -500, 5000, "altitude", "m");
    within(hertz, 10, 1000, "rate", "Hz");
    within(idleSeconds, 1, 1e7, "idle time", "s");
  }

  private static void within(OptionalDouble value, double low, double high, String... names) {
    double checked = value.orElse(low);
    Demand.that(
        checked >= low && checked <= high,
        String.format(
            Locale.ROOT,
            "%s must be between %s and %s %s, not %s",
            names[0],
            plain(low),
            plain(high),
            names[1],
            plain(checked)));
  }

  private static String plain(double value) {
    return Double.isFinite(value)
        ? BigDecimal.valueOf(value).stripTrailingZeros().toPlainString()
        : Double.toString(value);
  }
}
