package org.thumbseal.measurement;

import java.util.ArrayList;
import java.util.List;

/**
 * Cuts a record of constant levels with noise where the level changes, by splitting it again and
 * again at the place that leaves the least sum of squares, as long as the step stands out.
 */
final class Steps {
  private static final double BIN = 0.1;
  private static final int SHORTEST = 5;
  private static final double SIGNIFICANT = 4.5;
  private static final double SMALLEST = 0.015;

  /**
   * A stretch of one level.
   *
   * @param from s
   * @param to s
   * @param mean kPa
   */
  record Level(double from, double to, double mean) {
    double length() {
      return to - from;
    }
  }

  private final Curve curve;
  private final Curve bins;
  private final List<Level> levels = new ArrayList<>();

  private Steps(Curve curve, Curve bins) {
    this.curve = curve;
    this.bins = bins;
  }

  /** The levels of a curve, in order; one where there is no step. */
  static List<Level> of(Curve curve) {
    if (curve.isEmpty()) {
      return List.of();
    }
    Curve bins = curve.binned(BIN);
    Steps steps = new Steps(curve, bins);
    steps.split(0, bins.size());
    return steps.sharpened();
  }

  private void split(int from, int end) {
    int best = bestSplit(from, end);
    if (best < 0) {
      levels.add(new Level(bins.time(from), endOf(end), mean(from, end)));
    } else {
      split(from, best);
      split(best, end);
    }
  }

  /** The same levels with their borders moved from the middle of a bin to a sample. */
  private List<Level> sharpened() {
    List<Level> sharp = new ArrayList<>();
    double from = curve.firstTime();
    for (int i = 0; i < levels.size(); i++) {
      boolean last = i + 1 == levels.size();
      double to = last ? levels.get(i).to() : border(levels.get(i), levels.get(i + 1));
      Curve part = curve.between(from, to);
      sharp.add(new Level(from, to, part.isEmpty() ? levels.get(i).mean() : part.mean()));
      from = to;
    }
    return sharp;
  }

  /** The first sample of the second level, by least squares over the two bins at the border. */
  private double border(Level first, Level second) {
    Curve near = curve.between(first.to() - 1.5 * BIN, first.to() + 1.5 * BIN);
    double middle = (first.mean() + second.mean()) / 2;
    double sign = Math.signum(second.mean() - first.mean());
    double gain = 0;
    double most = Double.NEGATIVE_INFINITY;
    double border = first.to();
    for (int i = near.size() - 1; i >= 0; i--) {
      gain += sign * (near.level(i) - middle);
      if (gain > most) {
        most = gain;
        border = near.time(i);
      }
    }
    return border;
  }

  private double endOf(int end) {
    return end < bins.size() ? bins.time(end) : bins.lastTime() + BIN;
  }

  /** The split that takes most off the sum of squares; -1 where no step stands out. */
  private int bestSplit(int from, int end) {
    int best = -1;
    double most = 0;
    double total = sum(from, end);
    double left = sum(from, Math.min(end, from + SHORTEST - 1));
    for (int i = from + SHORTEST; i <= end - SHORTEST; i++) {
      left += bins.level(i - 1);
      double step = left / (i - from) - (total - left) / (end - i);
      double gain = step * step * (i - from) * (end - i) / (end - from);
      if (gain > most) {
        most = gain;
        best = i;
      }
    }
    return best >= 0 && standsOut(from, best, end) ? best : -1;
  }

  private boolean standsOut(int from, int split, int end) {
    double step = Math.abs(mean(split, end) - mean(from, split));
    double spread = Math.max(spread(from, split), spread(split, end));
    double error = spread * Math.sqrt(1.0 / (split - from) + 1.0 / (end - split));
    return step > SMALLEST && step > SIGNIFICANT * error;
  }

  private double spread(int from, int end) {
    double mean = mean(from, end);
    double squares = 0;
    for (int i = from; i < end; i++) {
      squares += (bins.level(i) - mean) * (bins.level(i) - mean);
    }
    return Math.sqrt(squares / Math.max(1, end - from - 1));
  }

  private double mean(int from, int end) {
    return sum(from, end) / (end - from);
  }

  private double sum(int from, int end) {
    double sum = 0;
    for (int i = from; i < end; i++) {
      sum += bins.level(i);
    }
    return sum;
  }
}
