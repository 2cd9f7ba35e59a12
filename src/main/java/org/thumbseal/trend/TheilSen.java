package org.thumbseal.trend;

import java.util.Arrays;

/**
 * A straight line by the median of the slopes of all pairs (Theil 1950, Sen, J. Am. Stat. Assoc. 63
 * (1968) 1379), with the confidence interval of the slope from Kendall's S. Pairs are made within
 * one sensor only.
 *
 * @param slope per day
 * @param low end of the interval of the slope
 * @param high end of the interval of the slope
 */
record TheilSen(double slope, double low, double high) {
  static TheilSen of(Points points, double confidence) {
    double[] slopes = slopes(points);
    double width = Kendall.of(points).width(confidence);
    int lowest = (int) Math.rint((slopes.length - width) / 2) - 1;
    int highest = (int) Math.rint((slopes.length + width) / 2);
    return new TheilSen(
        Median.ofSorted(slopes),
        slopes[Math.max(lowest, 0)],
        slopes[Math.min(highest, slopes.length - 1)]);
  }

  /** Slopes of all pairs of one sensor on different days, in order of size. */
  static double[] slopes(Points points) {
    int n = points.size();
    double[] slopes = new double[n * (n - 1) / 2];
    int count = 0;
    for (int j = 1; j < n; j++) {
      for (int i = 0; i < j; i++) {
        double days = points.day(j) - points.day(i);
        if (points.together(i, j) && days > 0) {
          slopes[count++] = (points.value(j) - points.value(i)) / days;
        }
      }
    }
    double[] found = Arrays.copyOf(slopes, count);
    Arrays.sort(found);
    return found;
  }
}
