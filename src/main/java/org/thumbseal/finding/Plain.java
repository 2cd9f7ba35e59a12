package org.thumbseal.finding;

import java.util.Locale;
import java.util.Optional;
import org.thumbseal.quantity.StandardAtmosphere;

/** Findings that need no model: they stand in the curve for all to see. */
final class Plain {
  /** Below this share of ambient a pump hardly pulls. */
  private static final double HARDLY = 0.25;

  private static final double KILOPASCALS = StandardAtmosphere.SEA_LEVEL_PASCALS / 1_000;

  private Plain() {}

  /** Hardly any vacuum at all. */
  static Optional<Finding> noVacuum(Signs signs) {
    double lacking = HARDLY - signs.highest();
    return lacking > 0
        ? Optional.of(
            Finding.of(
                FindingCode.NO_VACUUM,
                Strength.confidence(1 + 10 * lacking, 1, 0.8),
                text(
                    "With the inlet blocked the vacuum came to %.0f %% of the air pressure only.",
                    100 * signs.highest())))
        : Optional.empty();
  }

  /** A rise that broke off although the pump could pull on. */
  static Optional<Finding> control(Signs signs) {
    return signs
        .pump()
        .flatMap(
            pump ->
                pump.ceiling()
                    .map(
                        held ->
                            Finding.of(
                                FindingCode.CONTROL_NOT_AT_MAXIMUM,
                                Strength.confidence(pump.reach() - held, 0.015, 0.8),
                                text(
                                    "The rise broke off at %.0f %% of the air pressure and stayed"
                                        + " there; by its course the pump would have come to"
                                        + " %.0f %%.",
                                    100 * held, 100 * pump.reach()))));
  }

  /**
   * Vacuum with the inlet open.
   *
   * @param usual what a free inlet has at most, as a share of ambient
   */
  static Optional<Finding> blockedInlet(Signs signs, double usual) {
    return signs.open() > usual
        ? Optional.of(
            Finding.of(
                FindingCode.BLOCKED_INLET,
                Strength.confidence(signs.open(), usual, 0.7),
                text(
                    "With the inlet open the vacuum stood at %.1f kPa already (reckoned at sea"
                        + " level); a free inlet has %.1f kPa at most.",
                    KILOPASCALS * signs.open(), KILOPASCALS * usual)))
        : Optional.empty();
  }

  static String text(String format, Object... values) {
    return String.format(Locale.ROOT, format, values);
  }
}
