package org.thumbseal.trend;

import java.util.Arrays;
import java.util.function.IntToDoubleFunction;
import java.util.stream.IntStream;
import java.util.stream.Stream;

/** Lays every shape through values of one level of sensor, by medians. */
final class Courses {
  private final Points points;
  private final int count;

  Courses(Points points) {
    this.points = points;
    count = points.size();
  }

  Stream<Course> withoutPlace() {
    return Stream.of(flat(), line());
  }

  /** All that could begin with this value. */
  Stream<Course> at(int place) {
    return Stream.of(step(place), lineWithStep(place), lateLine(place), restingLine(place));
  }

  private Course flat() {
    return new Course(Shape.FLAT, 0, misfit(0, count, 0));
  }

  private Course line() {
    return new Course(Shape.LINE, 0, misfit(0, count, Median.ofSorted(TheilSen.slopes(points))));
  }

  Course step(int place) {
    return new Course(Shape.STEP, place, misfit(0, place, 0) + misfit(place, count, 0));
  }

  Course lineWithStep(int place) {
    double slope = slopeBeside(place);
    return new Course(
        Shape.LINE_WITH_STEP, place, misfit(0, place, slope) + misfit(place, count, slope));
  }

  private double slopeBeside(int place) {
    double[] slopes = new double[count * count / 2];
    int found = 0;
    for (int j = 1; j < count; j++) {
      for (int i = j < place ? 0 : place; i < j; i++) {
        if (points.day(j) > points.day(i)) {
          slopes[found++] = slope(i, j);
        }
      }
    }
    return found == 0 ? 0 : Median.of(Arrays.copyOf(slopes, found));
  }

  private double slope(int i, int j) {
    return (points.value(j) - points.value(i)) / (points.day(j) - points.day(i));
  }

  private Course lateLine(int place) {
    double level = level(0, place, 0);
    double knee = points.day(place - 1);
    double slope = slopeFrom(knee, level, place, count);
    return new Course(
        Shape.LATE_LINE,
        place,
        sum(0, place, i -> level) + sum(place, count, i -> level + slope * (points.day(i) - knee)));
  }

  private Course restingLine(int place) {
    double level = level(place, count, 0);
    double knee = points.day(place);
    double slope = slopeFrom(knee, level, 0, place);
    return new Course(
        Shape.RESTING_LINE,
        place,
        sum(0, place, i -> level + slope * (points.day(i) - knee)) + sum(place, count, i -> level));
  }

  private double slopeFrom(double knee, double level, int from, int to) {
    double[] slopes =
        IntStream.range(from, to)
            .filter(i -> points.day(i) != knee)
            .mapToDouble(i -> (points.value(i) - level) / (points.day(i) - knee))
            .toArray();
    return slopes.length == 0 ? 0 : Median.of(slopes);
  }

  private double misfit(int from, int to, double slope) {
    double level = level(from, to, slope);
    return sum(from, to, i -> level + slope * points.day(i));
  }

  private double level(int from, int to, double slope) {
    double[] left = new double[to - from];
    Arrays.setAll(left, i -> points.value(from + i) - slope * points.day(from + i));
    return Median.of(left);
  }

  private double sum(int from, int to, IntToDoubleFunction course) {
    return IntStream.range(from, to)
        .mapToDouble(i -> Math.abs(points.value(i) - course.applyAsDouble(i)))
        .sum();
  }
}
