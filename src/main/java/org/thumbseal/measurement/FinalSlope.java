package org.thumbseal.measurement;

import org.thumbseal.fit.LinearLeastSquares;

/** How fast the vacuum still grows at the end of the blocked stretch. */
final class FinalSlope {
  private static final double LONGEST = 3;
  private static final double SHARE = 0.25;
  private static final double GUARD = 0.06;

  private FinalSlope() {}

  /** kPa/s over the last 3 s, or the last quarter of a shorter stretch. */
  static double of(Curve blocked) {
    if (blocked.size() < 4) {
      return 0;
    }
    double end = blocked.lastTime() - GUARD;
    double span = Math.min(LONGEST, SHARE * (end - blocked.firstTime()));
    Curve last = blocked.between(end - span, end).thinned(400);
    return last.size() < 3
        ? 0
        : LinearLeastSquares.robustPolynomial(last.points(), 1, end)
            .result()
            .map(f -> f.parameter(1))
            .orElse(0.0);
  }
}
