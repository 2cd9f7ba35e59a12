package org.thumbseal.trend;

import java.util.Arrays;

/** The middle value; of an even number the mean of the two middle ones. */
final class Median {
  private Median() {}

  /** Of values in any order, which stay as they are; at least one. */
  static double of(double[] values) {
    double[] sorted = values.clone();
    Arrays.sort(sorted);
    return ofSorted(sorted);
  }

  static double ofSorted(double[] sorted) {
    int half = sorted.length / 2;
    return sorted.length % 2 == 1 ? sorted[half] : (sorted[half - 1] + sorted[half]) / 2;
  }
}
