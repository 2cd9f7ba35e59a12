package org.thumbseal.measurement;

import java.util.Random;
import java.util.function.DoubleUnaryOperator;

/** Curves drawn from a formula, with white noise from a seed. */
final class Drawn {
  private Drawn() {}

  /** A curve over [0, seconds). */
  static Curve curve(double seconds, double hertz, DoubleUnaryOperator level) {
    return noisy(seconds, hertz, level, 0, 0);
  }

  static Curve noisy(
      double seconds, double hertz, DoubleUnaryOperator level, double noise, long seed) {
    Random random = new Random(seed);
    int n = (int) Math.round(seconds * hertz);
    double[] times = new double[n];
    double[] levels = new double[n];
    for (int i = 0; i < n; i++) {
      times[i] = i / hertz;
      levels[i] = level.applyAsDouble(times[i]) + noise * random.nextGaussian();
    }
    return Curve.of(times, levels);
  }
}
