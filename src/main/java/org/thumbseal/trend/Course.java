package org.thumbseal.trend;

/**
 * A shape laid through the values.
 *
 * @param shape which
 * @param at first value after its place; 0 where it has none
 * @param misfit sum of the sizes of what it leaves
 */
record Course(Shape shape, int at, double misfit) {
  /** What a jump must be better by where a part was replaced: most replacements change nothing. */
  private static final double REPORTED = 4;

  /**
   * Schwarz's criterion (Ann. Statist. 6 (1978) 461) for errors of the double exponential
   * distribution, which forgives the odd bad value: the smaller, the likelier the shape.
   *
   * @param count of values
   * @param floor misfit of one value below which nothing can be told
   * @param known whether somebody said that something happened at this place
   */
  double cost(int count, double floor, boolean known) {
    double each = Math.max(misfit / count, floor);
    double place = known ? REPORTED : shape.placeCost();
    return 2 * count * Math.log(each) + shape.numbers() * Math.log(count) + place;
  }
}
