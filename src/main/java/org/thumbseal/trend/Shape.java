package org.thumbseal.trend;

/**
 * What a course of values can look like, simplest first. What a place costs that had to be found in
 * the data was settled on drawn series ({@code trend.md}): with less, steps are seen in nothing;
 * with more, a jump passes for a trend.
 */
enum Shape {
  /** One level. */
  FLAT(1, 0),
  /** A straight line. */
  LINE(2, 0),
  /** One level, and from some test on another. */
  STEP(2, 8),
  /** A straight line that jumps. */
  LINE_WITH_STEP(3, 12),
  /** One level, and from some test on a straight line. */
  LATE_LINE(2, 12),
  /** A straight line that comes to rest. */
  RESTING_LINE(2, 12);

  private final int numbers;
  private final double placeCost;

  Shape(int numbers, double placeCost) {
    this.numbers = numbers;
    this.placeCost = placeCost;
  }

  /** How many numbers are fitted, without the place. */
  int numbers() {
    return numbers;
  }

  /** What it must be better by, on Schwarz's criterion, where nobody said that there is a place. */
  double placeCost() {
    return placeCost;
  }

  /** Whether what came before its place is of another kind. */
  boolean somewhere() {
    return placeCost > 0;
  }

  boolean jumps() {
    return this == STEP || this == LINE_WITH_STEP;
  }
}
