package org.thumbseal.sample;

import java.util.ArrayDeque;
import java.util.Arrays;
import java.util.Deque;

/** The usual step between readings: the median of the last ones. */
final class RecentSteps {
  private static final int MOST = 9;

  private final Deque<Double> steps = new ArrayDeque<>(MOST);

  void add(double step) {
    if (steps.size() == MOST) {
      steps.removeFirst();
    }
    steps.addLast(step);
  }

  void forget() {
    steps.clear();
  }

  boolean isEmpty() {
    return steps.isEmpty();
  }

  /** The median, in the unit of what was added; 0 where nothing was. */
  double usual() {
    double[] sorted = steps.stream().mapToDouble(Double::doubleValue).toArray();
    Arrays.sort(sorted);
    return sorted.length == 0 ? 0 : sorted[sorted.length / 2];
  }
}
