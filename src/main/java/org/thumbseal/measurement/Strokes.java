package org.thumbseal.measurement;

import java.util.List;
import java.util.Optional;
import org.thumbseal.measurement.Steps.Level;

/**
 * Tells a quiet start from a running pump by the scatter that strokes bring with them.
 *
 * <p>A low rate turns strokes into a slow wave (48.5 Hz, sampled at 50 Hz, into 1.5 Hz) that can
 * hide the small step of an open vacuum; but quiet it is not. The start is where two variances
 * explain the record best (likelihood ratio of normal samples).
 */
final class Strokes {
  private static final double SHORTEST = 1;

  /** The scatter has to grow by this factor in variance. */
  private static final double STIRRED = 2.5;

  /** A ratio of likelihoods that no run of quiet readings reaches, in twice its logarithm. */
  private static final double SIGNIFICANT = 40;

  /** A sensor that stands still has this much scatter all the same, kPa squared. */
  private static final double STILL = 0.02 * 0.02;

  private final Curve curve;
  private final double[] sums;
  private final double[] squares;

  private Strokes(Curve curve) {
    this.curve = curve;
    this.sums = new double[curve.size() + 1];
    this.squares = new double[curve.size() + 1];
    double first = curve.level(0);
    for (int i = 0; i < curve.size(); i++) {
      double level = curve.level(i) - first;
      sums[i + 1] = sums[i] + level;
      squares[i + 1] = squares[i] + level * level;
    }
  }

  /** The quiet level and the one with strokes after it; empty where none begin. */
  static Optional<List<Level>> of(Curve curve) {
    return curve.isEmpty() ? Optional.empty() : new Strokes(curve).levels();
  }

  private Optional<List<Level>> levels() {
    int first = curve.indexAt(curve.firstTime() + SHORTEST);
    int last = curve.indexAt(curve.lastTime() - SHORTEST);
    int best = -1;
    double most = SIGNIFICANT;
    for (int i = first; i < last; i++) {
      double gain = gain(i);
      if (gain > most && variance(i, curve.size()) > STIRRED * variance(0, i)) {
        most = gain;
        best = i;
      }
    }
    return best < 0
        ? Optional.empty()
        : Optional.of(List.of(level(0, best), level(best, curve.size())));
  }

  private double gain(int split) {
    int all = curve.size();
    return likelihood(split, all) + likelihood(0, split) - likelihood(0, all);
  }

  /** Twice the logarithm, without what all divisions have in common. */
  private double likelihood(int from, int end) {
    return -(end - from) * Math.log(variance(from, end));
  }

  private double variance(int from, int end) {
    double mean = mean(from, end);
    return Math.max(STILL, (squares[end] - squares[from]) / (end - from) - mean * mean);
  }

  private double mean(int from, int end) {
    return (sums[end] - sums[from]) / (end - from);
  }

  private Level level(int from, int end) {
    double to = end < curve.size() ? curve.time(end) : curve.lastTime();
    return new Level(curve.time(from), to, curve.level(0) + mean(from, end));
  }
}
