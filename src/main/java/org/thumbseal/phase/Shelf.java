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

  /** Whether the climb, now {@code rise} kPa above its base, has just left a shelf for good. */
  boolean isLeft(Trace trace, double now, double rise) {
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
