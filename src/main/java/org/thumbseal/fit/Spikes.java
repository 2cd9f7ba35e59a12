package org.thumbseal.fit;

import java.util.Arrays;
import java.util.BitSet;

/**
 * Tells points that belong to a curve from single spikes, by the median of the absolute residuals.
 */
final class Spikes {
  /** A residual of more robust standard deviations than this is a spike. */
  static final int DEVIATIONS = 4;

  /** Median absolute deviation of a normal distribution of unit variance: 1/0.6745. */
  private static final double NORMAL = 1.4826;

  private final double step;

  Spikes(Points points) {
    this.step = smallestStep(points);
  }

  /** The points within the band around the curve. */
  BitSet inliers(FitResult curve, Problem whole) {
    double[] residuals = whole.residuals(curve.parameters());
    double limit = DEVIATIONS * deviation(residuals);
    BitSet kept = new BitSet();
    for (int i = 0; i < residuals.length; i++) {
      kept.set(i, Math.abs(residuals[i]) <= limit);
    }
    return kept;
  }

  /** Never under that of rounding to the sensor's step: one step off is no spike. */
  private double deviation(double[] residuals) {
    double[] sizes = Arrays.stream(residuals).map(Math::abs).sorted().toArray();
    double median = (sizes[(sizes.length - 1) / 2] + sizes[sizes.length / 2]) / 2;
    return Math.max(NORMAL * median, step / Math.sqrt(12));
  }

  /** Smallest difference between two ordinates that are not equal. */
  private static double smallestStep(Points points) {
    double[] sorted = new double[points.size()];
    Arrays.setAll(sorted, points::y);
    Arrays.sort(sorted);
    double smallest = Double.POSITIVE_INFINITY;
    for (int i = 1; i < sorted.length; i++) {
      double step = sorted[i] - sorted[i - 1];
      smallest = step > 0 ? Math.min(smallest, step) : smallest;
    }
    return Double.isFinite(smallest) ? smallest : 0;
  }
}
