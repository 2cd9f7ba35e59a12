package org.thumbseal.measurement;

import java.util.Optional;

/** Falls of the vacuum during the rise: a thumb that lost the inlet for a moment. */
final class Slip {
  private static final double LARGEST_FALL = 3;
  private static final double SMOOTHED = 0.1;

  private Slip() {}

  /** The deepest fall in kPa, where it is more than 3 kPa. */
  static Optional<Double> in(Curve rise) {
    double highest = Double.NEGATIVE_INFINITY;
    double deepest = 0;
    Curve smooth = rise.binned(SMOOTHED);
    for (int i = 0; i < smooth.size(); i++) {
      highest = Math.max(highest, smooth.level(i));
      deepest = Math.max(deepest, highest - smooth.level(i));
    }
    return deepest > LARGEST_FALL ? Optional.of(deepest) : Optional.empty();
  }
}
