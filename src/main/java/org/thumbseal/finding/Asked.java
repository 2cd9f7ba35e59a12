package org.thumbseal.finding;

import java.util.Optional;

/**
 * What is asked of a test, and what it did.
 *
 * @param maximum least maximum vacuum, as a share of ambient
 * @param open largest open vacuum, as a share of ambient
 * @param riseTime measured, s; not a number where the rise was not reached
 * @param riseLimit longest rise, s
 * @param usualFrom a faster rise is not usual, s
 * @param speed of the pump beside the rated one; absent where either is not known
 */
record Asked(
    double maximum,
    double open,
    double riseTime,
    double riseLimit,
    double usualFrom,
    Optional<Speed> speed) {

  /**
   * Pumping speeds, L/min.
   *
   * @param measured with the volume that the jar is said to have
   * @param rated by the pump's papers
   */
  record Speed(double measured, double rated) {
    /** Below this share of the rated speed a pump is slow (common practice, no source). */
    private static final double SLOW = 0.8;

    /** Above this share it is the volume that is wrong (common practice, no source). */
    private static final double FAST = 1.2;

    boolean isSlow() {
      return measured < SLOW * rated;
    }

    boolean isFast() {
      return measured > FAST * rated;
    }

    /** "12.0 L/min, 40 % of the rated 30.0 L/min". */
    String text() {
      return Plain.text(
          "%.1f L/min, %.0f %% of the rated %.1f L/min", measured, 100 * measured / rated, rated);
    }
  }

  boolean isSlow() {
    return riseTime > riseLimit;
  }

  boolean isFast() {
    return riseTime < usualFrom;
  }
}
