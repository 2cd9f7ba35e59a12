package org.thumbseal.trend;

/** The middle value; of an even number the mean of the two middle ones. */
final class Median {
  private Median() {}

  /** Of values in any order, which stay as they are; at least one. */
  static double of(double[] values) {
    double[] parted = values.clone();
    int half = parted.length / 2;
    double upper = part(parted, half);
    return parted.length % 2 == 1 ? upper : (highest(parted, half) + upper) / 2;
  }

  static double ofSorted(double[] sorted) {
    int half = sorted.length / 2;
    return sorted.length % 2 == 1 ? sorted[half] : (sorted[half - 1] + sorted[half]) / 2;
  }

  /**
   * Brings the value of a place to where sorting would bring it, none before it greater, none
   * behind it less (Hoare, Commun. ACM 4 (1961) 321, algorithm 65): a trend takes thousands of
   * medians of thousands of slopes, and sorting each is most of its time.
   */
  private static double part(double[] values, int place) {
    int low = 0;
    int high = values.length - 1;
    while (low < high) {
      double pivot = values[place];
      int i = low;
      int j = high;
      do {
        while (values[i] < pivot) {
          i++;
        }
        while (pivot < values[j]) {
          j--;
        }
        if (i <= j) {
          double other = values[i];
          values[i++] = values[j];
          values[j--] = other;
        }
      } while (i <= j);
      low = j < place ? i : low;
      high = place < i ? j : high;
    }
    return values[place];
  }

  private static double highest(double[] values, int end) {
    double highest = values[0];
    for (int i = 1; i < end; i++) {
      highest = Math.max(highest, values[i]);
    }
    return highest;
  }
}
