package org.thumbseal.measurement;

import org.thumbseal.phase.Ending;

/**
 * The end of the blocked stretch: where the last steep fall begins, or where the record ends.
 *
 * @param seconds device time, s
 */
record Release(double seconds) {
  private static final double LONGEST = 4;
  private static final double RISING_AGAIN = 0.1;
  private static final double SHORT_STEP = 0.04;

  static Release of(Recorded recorded, double onset) {
    Curve curve = recorded.withEdges();
    double end = Math.min(recorded.window().endSeconds(), curve.lastTime());
    if (recorded.window().ending() != Ending.RELEASED) {
      return new Release(end + 1e-9);
    }
    Curve fall = curve.between(Math.max(onset, end - LONGEST), end + 1e-9);
    int steepest = steepest(fall);
    int begin = steepest;
    while (begin > 0 && drop(fall, begin - 1) > RISING_AGAIN * drop(fall, steepest)) {
      begin--;
    }
    return new Release(fall.time(Math.min(begin + 1, fall.size() - 1)));
  }

  private static int steepest(Curve fall) {
    int best = 0;
    for (int i = 1; i < fall.size(); i++) {
      best = drop(fall, i) > drop(fall, best) ? i : best;
    }
    return best;
  }

  /** Fall from a sample to one at least 40 ms later, kPa/s. */
  private static double drop(Curve fall, int from) {
    int to =
        Math.min(fall.size() - 1, Math.max(from + 1, fall.indexAt(fall.time(from) + SHORT_STEP)));
    double apart = fall.time(to) - fall.time(from);
    return apart > 0 ? (fall.level(from) - fall.level(to)) / apart : 0;
  }
}
