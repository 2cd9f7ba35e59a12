package org.thumbseal.measurement;

import java.util.Optional;

/**
 * Falls of the vacuum during the rise: a thumb that lost the inlet for a moment.
 *
 * <p>Stroke ripple that the sampling folds down to a slow swing falls too, but leaves nothing
 * behind: smoothed over more than half a second the rise goes on. A slip sets the rise back.
 */
final class Slip {
  private static final double LARGEST_FALL = 3;
  private static final double SMOOTHED = 0.1;
  private static final double SMOOTHED_MORE = 0.7;
  private static final double SET_BACK = 0.5;

  /** No ripple is so deep, kPa. */
  private static final double CERTAIN = 8;

  private Slip() {}

  /** The deepest fall in kPa, where it is more than 3 kPa. */
  static Optional<Double> in(Curve rise) {
    double fall = deepest(rise.binned(SMOOTHED));
    boolean real = fall > CERTAIN || deepest(rise.binned(SMOOTHED_MORE)) > SET_BACK;
    return fall > LARGEST_FALL && real ? Optional.of(fall) : Optional.empty();
  }

  private static double deepest(Curve smooth) {
    double highest = Double.NEGATIVE_INFINITY;
    double deepest = 0;
    for (int i = 0; i < smooth.size(); i++) {
      highest = Math.max(highest, smooth.level(i));
      deepest = Math.max(deepest, highest - smooth.level(i));
    }
    return deepest;
  }
}
