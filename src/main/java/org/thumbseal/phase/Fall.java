package org.thumbseal.phase;

/**
 * A vacuum on its way down: a release, a slip that recovers, or a decay; time tells.
 *
 * @param start device time of the last high level, s; not a number where nothing falls
 * @param lowest level since, kPa
 * @param isDecay too slow for a release
 */
record Fall(double start, double lowest, boolean isDecay) {
  static final Fall NONE = new Fall(Double.NaN, 0, false);

  /** A jar opened to the air is empty of vacuum within this time, s. */
  static final double LONGEST_RELEASE = 3;

  /** After this a decay says nothing new, s. */
  static final double LONGEST_DECAY = 120;

  boolean isNone() {
    return Double.isNaN(start);
  }

  Fall with(double level) {
    return new Fall(start, Math.min(lowest, level), isDecay);
  }

  Fall asDecay() {
    return new Fall(start, lowest, true);
  }
}
