package org.thumbseal.page;

import java.util.Arrays;

/**
 * The zero of the number on the page: the level before the pump starts. A measurement finds its own
 * from the whole record; this one has to be there before.
 *
 * <p>A median over the last seconds, the lower one: what the pump adds before its start is seen
 * does not move it.
 */
final class LiveZero {
  /** Length of a block, s. */
  private static final double BLOCK = 0.5;

  private static final int BLOCKS = 10;

  private final double[] means = new double[BLOCKS];
  private int blocks;
  private double sum;
  private int count;
  private double blockBegan = Double.NaN;
  private double zero = Double.NaN;

  /** Takes a reading at rest: device time in s, vacuum on the sensor's own scale in kPa. */
  void add(double seconds, double kilopascals) {
    if (!(seconds - blockBegan < BLOCK)) {
      endBlock();
      blockBegan = seconds;
    }
    sum += kilopascals;
    count++;
  }

  private void endBlock() {
    if (count > 0) {
      means[blocks % BLOCKS] = sum / count;
      blocks++;
      zero = lowerMedian();
    }
    sum = 0;
    count = 0;
  }

  private double lowerMedian() {
    double[] sorted = Arrays.copyOf(means, Math.min(blocks, BLOCKS));
    Arrays.sort(sorted);
    return sorted[(sorted.length - 1) / 2];
  }

  /** Follows anew; what was found stands until there is something newer. */
  void restart() {
    blocks = 0;
    sum = 0;
    count = 0;
    blockBegan = Double.NaN;
  }

  /** Forgets all: another sensor may be at the port. */
  void forget() {
    restart();
    zero = Double.NaN;
  }

  boolean isFound() {
    return !Double.isNaN(zero);
  }

  /** On the sensor's own scale, kPa; not a number where there is none. */
  double kilopascals() {
    return zero;
  }
}
