package org.thumbseal.phase;

/**
 * A level at which a climb rests before it goes on: then it was the open phase of a pump whose
 * inlet is partly blocked already, and the test begins where it is left.
 */
final class Shelf {
  private static final double HIGHEST = 45;
  private static final double FLAT = 1;
  private static final double FLAT_FOR = 1.5;
  private static final double LEFT = 5;
  private static final double STEEPER = 3;
  private static final double STEEP = 3;
  private static final double LEAVING = 1;
  private static final double LONGEST_LEAVING = 4;

  private double height = Double.NaN;
  private double lastFlat;
  private double left = Double.NaN;

  double height() {
    return height;
  }

  double leftSeconds() {
    return left;
  }

  /**
   * A shelf need not be flat: where a climb that was slowing down turns steep all at once, the
   * inlet was closed at that moment.
   */
  private boolean turnsSteep(Trace trace) {
    double before = trace.meanOfAges(0.7, 0.9);
    double slow = (before - trace.meanOfAges(1.9, 2.1)) / 1.2;
    double slowJustBefore = (before - trace.meanOfAges(1.1, 1.3)) / 0.4;
    double steep = (trace.meanOfAges(0, 0.2) - trace.meanOfAges(0.4, 0.6)) / 0.4;
    double highest = Math.max(slow, slowJustBefore);
    return Math.min(slow, slowJustBefore) > -0.5 && steep > STEEPER * highest + STEEP;
  }

  /** Whether the climb, now {@code rise} kPa above its base, has just left a shelf for good. */
  boolean isLeft(Trace trace, double now, double rise) {
    if (rise < HIGHEST && turnsSteep(trace)) {
      height = rise - (trace.meanOfAges(0, 0.2) - trace.meanOfAges(0.6, 0.8));
      left = now - 0.6;
      return true;
    }
    if (trace.spreadOver(FLAT_FOR) < FLAT && rise < HIGHEST) {
      height = rise;
      lastFlat = now;
      left = Double.NaN;
    } else if (Double.isNaN(left) && rise > height + LEAVING) {
      left = now;
    }
    return rise > height + LEFT && now - lastFlat < LONGEST_LEAVING;
  }
}
