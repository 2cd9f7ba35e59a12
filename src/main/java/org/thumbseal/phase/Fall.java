package org.thumbseal.phase;

/**
 * A vacuum on its way down: a release, a slip that recovers, or a decay; time tells.
 *
 * @param start device time of the last high level, s; not a number where nothing falls
 * @param lowest level since, kPa
 * @param isDecay too slow for a release
 * @param low since when the vacuum is as low as with an open inlet, s; not a number where it is not
 */
record Fall(double start, double lowest, boolean isDecay, double low) {
  static final Fall NONE = new Fall(Double.NaN, 0, false, Double.NaN);

  /** After a hold a vacuum that stays low for so long is released, s: somebody waits. */
  private static final double RELEASED_AFTER_HOLD = 0.1;

  /** In mid-rise it may be a thumb that slipped and will be back, s. */
  private static final double RELEASED_IN_RISE = 1;

  /** A jar opened to the air is empty of vacuum within this time, s. */
  static final double LONGEST_RELEASE = 3;

  /** After this a decay says nothing new, s. */
  static final double LONGEST_DECAY = 120;

  boolean isNone() {
    return Double.isNaN(start);
  }

  Fall with(double level) {
    return new Fall(start, Math.min(lowest, level), isDecay, low);
  }

  Fall lowSince(double now) {
    return Double.isNaN(low) ? new Fall(start, lowest, isDecay, now) : this;
  }

  boolean isOver(double now, boolean held) {
    return now - low >= (held ? RELEASED_AFTER_HOLD : RELEASED_IN_RISE);
  }

  Fall asDecay() {
    return new Fall(start, lowest, true, low);
  }
}
