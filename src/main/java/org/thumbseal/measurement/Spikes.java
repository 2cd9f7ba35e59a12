package org.thumbseal.measurement;

/**
 * Leaves out single samples (or two in a row) that stand far off their neighbours: a disturbed line
 * or conversion, never the gas in a jar.
 */
final class Spikes {
  private static final int REACH = 2;
  private static final double DEVIATIONS = 6;
  private static final double SMALLEST = 0.6;

  private Spikes() {}

  static Curve removed(Curve curve) {
    double limit = Math.max(SMALLEST, DEVIATIONS * noise(curve));
    double[] times = new double[curve.size()];
    double[] levels = new double[curve.size()];
    int kept = 0;
    for (int i = 0; i < curve.size(); i++) {
      if (Math.abs(curve.level(i) - medianAround(curve, i)) <= limit + slope(curve, i)) {
        times[kept] = curve.time(i);
        levels[kept++] = curve.level(i);
      }
    }
    return Curve.of(java.util.Arrays.copyOf(times, kept), java.util.Arrays.copyOf(levels, kept));
  }

  /**
   * Standard deviation of white noise, kPa, from second differences, which a smooth curve hardly
   * has: their variance is six times that of the noise.
   */
  static double noise(Curve curve) {
    double[] second = new double[Math.max(0, curve.size() - 2)];
    java.util.Arrays.setAll(
        second, i -> Math.abs(curve.level(i) - 2 * curve.level(i + 1) + curve.level(i + 2)));
    return second.length == 0 ? 0 : 1.4826 * Curve.median(second) / Math.sqrt(6);
  }

  private static double medianAround(Curve curve, int index) {
    return Curve.median(around(curve, index));
  }

  /** How far the neighbours on both sides lie apart: a true step or steep rise is no spike. */
  private static double slope(Curve curve, int index) {
    int first = Math.max(0, index - REACH);
    int last = Math.min(curve.size() - 1, index + REACH);
    return Math.abs(curve.level(last) - curve.level(first));
  }

  private static double[] around(Curve curve, int index) {
    int first = Math.max(0, index - REACH);
    int last = Math.min(curve.size() - 1, index + REACH);
    double[] levels = new double[last - first + 1];
    java.util.Arrays.setAll(levels, i -> curve.level(first + i));
    return levels;
  }
}
