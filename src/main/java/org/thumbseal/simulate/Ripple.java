package org.thumbseal.simulate;

/** The mark each stroke leaves on the pressure. */
final class Ripple {
  private static final double SECOND_HARMONIC = 0.2;

  private Ripple() {}

  /** The wave at a phase in strokes, about -1 to 1, zero in the mean. */
  static double wave(double strokes) {
    double angle = 2 * Math.PI * strokes;
    return StrictMath.cos(angle) + SECOND_HARMONIC * StrictMath.sin(2 * angle);
  }

  /** What an inlet that levels differences at a rate (1/s) lets stand of a wave. */
  static double passed(double hertz, double openRate) {
    double omega = 2 * Math.PI * hertz;
    return omega / Math.sqrt(omega * omega + openRate * openRate);
  }
}
