package org.thumbseal.finding;

/**
 * What is asked of a test, and what it did.
 *
 * @param maximum least maximum vacuum, as a share of ambient
 * @param open largest open vacuum, as a share of ambient
 * @param riseTime measured, s; not a number where the rise was not reached
 * @param riseLimit longest rise, s
 * @param usualFrom a faster rise is not usual, s
 */
record Asked(double maximum, double open, double riseTime, double riseLimit, double usualFrom) {
  boolean isSlow() {
    return riseTime > riseLimit;
  }

  boolean isFast() {
    return riseTime < usualFrom;
  }
}
