package org.thumbseal.measurement;

import java.util.Arrays;

/**
 * Leaves out single samples that stand far off their neighbours: a disturbed line or conversion,
 * never the gas in a jar.
 *
 * <p>A sample is kept if it fits any expectation: a neighbour, the middle between its nearest or
 * its next-nearest neighbours, or the straight continuation from the left or from the right. So
 * ramps, steps and corners stay.
 */
final class Spikes {
  private static final double DEVIATIONS = 6;
  private static final double SMALLEST = 1;
  private static final int NEIGHBOURHOOD = 8;

  private final Curve curve;

  private Spikes(Curve curve) {
    this.curve = curve;
  }

  static Curve removed(Curve curve) {
    double least = Math.max(SMALLEST, DEVIATIONS * noise(curve));
    Spikes spikes = new Spikes(curve);
    double[] times = new double[curve.size()];
    double[] levels = new double[curve.size()];
    int kept = 0;
    for (int i = 0; i < curve.size(); i++) {
      double distance = spikes.distance(i);
      if (distance <= least || distance <= DEVIATIONS * spikes.noiseAround(i)) {
        times[kept] = curve.time(i);
        levels[kept++] = curve.level(i);
      }
    }
    return Curve.of(Arrays.copyOf(times, kept), Arrays.copyOf(levels, kept));
  }

  /**
   * Standard deviation of white noise, kPa, from second differences, which a smooth curve hardly
   * has: their variance is six times that of the noise.
   */
  static double noise(Curve curve) {
    double[] second = new double[Math.max(0, curve.size() - 2)];
    Arrays.setAll(
        second, i -> Math.abs(curve.level(i) - 2 * curve.level(i + 1) + curve.level(i + 2)));
    return second.length == 0 ? 0 : 1.4826 * Curve.median(second) / Math.sqrt(6);
  }

  /** Where many samples stand off, as in strong stroke ripple, none is a spike. */
  private double noiseAround(int i) {
    int first = Math.max(0, i - NEIGHBOURHOOD);
    int end = Math.min(curve.size(), i + NEIGHBOURHOOD + 1);
    return noise(curve.part(first, end));
  }

  /** Distance of a sample from what fits it best, kPa; 0 where nothing can be expected. */
  private double distance(int i) {
    double nearest = Math.min(fromNeighbour(i, -1), fromNeighbour(i, 1));
    nearest = Math.min(nearest, fromMiddle(i, 1));
    nearest = Math.min(nearest, fromMiddle(i, 2));
    nearest = Math.min(nearest, fromLine(i, -1));
    nearest = Math.min(nearest, fromLine(i, 1));
    return Double.isInfinite(nearest) ? 0 : nearest;
  }

  private double fromNeighbour(int i, int side) {
    return has(i + side)
        ? Math.abs(curve.level(i) - curve.level(i + side))
        : Double.POSITIVE_INFINITY;
  }

  private double fromMiddle(int i, int reach) {
    return has(i - reach) && has(i + reach)
        ? Math.abs(curve.level(i) - (curve.level(i - reach) + curve.level(i + reach)) / 2)
        : Double.POSITIVE_INFINITY;
  }

  /** From the line through the two neighbours on one side. */
  private double fromLine(int i, int side) {
    return has(i + side) && has(i + 2 * side)
        ? Math.abs(curve.level(i) - 2 * curve.level(i + side) + curve.level(i + 2 * side))
        : Double.POSITIVE_INFINITY;
  }

  private boolean has(int i) {
    return i >= 0 && i < curve.size();
  }
}
