package org.thumbseal.trend;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.IntStream;
import java.util.stream.Stream;

/** Cuts a series at its jumps, until what is left at its end has none. */
final class Breaks {
  /** So many values must lie on either side of a change that nobody reported. */
  private static final int SIDE = 3;

  /** Below this share of the values no misfit is told from another. */
  private static final double FINEST = 1e-6;

  private final Series series;
  private final Points points;
  private final List<Step> steps = new ArrayList<>();
  private final List<Integer> beginnings = new ArrayList<>(List.of(0));
  private int first;

  /**
   * @param series thinned
   */
  Breaks(Series series) {
    this.series = series;
    points = Points.of(series.readings());
    takeReported();
    int end = points.size();
    for (Course last = best(end); last.shape().somewhere(); last = best(end)) {
      if (last.shape().jumps()) {
        take(last);
      } else {
        first += last.shape() == Shape.LATE_LINE ? last.at() - 1 : last.at();
        break;
      }
    }
  }

  /**
   * Each reported change is judged by what lies between the last jump and the next change: where a
   * filter clogs and is replaced again and again the values make a saw, in which no single jump is
   * better than none.
   */
  private void takeReported() {
    List<Integer> places = List.copyOf(known(0, points.size()));
    for (int i = 0; i < places.size(); i++) {
      Course course = best(i + 1 < places.size() ? places.get(i + 1) : points.size());
      if (course.shape().jumps() && first + course.at() == places.get(i)) {
        take(course);
      }
    }
  }

  private void take(Course jump) {
    steps.add(step(jump.at()));
    first += jump.at();
    beginnings.add(first);
  }

  List<Step> steps() {
    return List.copyOf(steps);
  }

  /** The first value of what is to be looked at for a trend. */
  int first() {
    return first;
  }

  /** What lies between the jumps. */
  Lives lives() {
    List<Points> over = new ArrayList<>();
    for (int i = 1; i < beginnings.size(); i++) {
      over.add(points.between(beginnings.get(i - 1), beginnings.get(i)).reconciled());
    }
    return new Lives(List.copyOf(over), tail());
  }

  Points tail() {
    return points.from(first).reconciled();
  }

  /** The likeliest course of the values from the last jump on, as far as a place. */
  private Course best(int end) {
    Points rest = points.between(first, end).reconciled();
    double[] slopes = TheilSen.slopes(rest);
    Points level =
        rest.size() == 0 ? rest : rest.levelled(slopes.length == 0 ? 0 : Median.ofSorted(slopes));
    if (level.size() < 2 || level.span() <= 0) {
      return new Course(Shape.FLAT, 0, 0);
    }
    Courses courses = new Courses(level);
    double floor = FINEST * (Math.abs(level.value(0)) + Double.MIN_NORMAL);
    Set<Integer> known = known(first, end);
    Comparator<Course> likeliest =
        Comparator.comparingDouble(
            c -> c.cost(level.size(), floor, c.shape().jumps() && known.contains(c.at())));
    return Stream.concat(
            courses.withoutPlace(),
            Stream.concat(
                known.stream().flatMap(at -> Stream.of(courses.step(at), courses.lineWithStep(at))),
                IntStream.rangeClosed(SIDE, level.size() - SIDE).boxed().flatMap(courses::at)))
        .min(likeliest)
        .orElseThrow();
  }

  /** Places after one, counted from it, where something was changed on the pump. */
  private Set<Integer> known(int from, int end) {
    Set<Integer> places = new TreeSet<>();
    for (int i = 1; from + i < end; i++) {
      double before = points.day(from + i - 1);
      double after = points.day(from + i);
      if (series.changes().stream().anyMatch(c -> before < c && c <= after)) {
        places.add(i);
      }
    }
    return places;
  }

  private Step step(int at) {
    int place = first + at;
    double before = points.day(place - 1);
    double after = points.day(place);
    return new Step(before, after, size(at), known(first, points.size()).contains(at));
  }

  /** By the nearest values on either side, so that a slope does not count. */
  private double size(int at) {
    int place = first + at;
    return middle(place, Math.min(place + SIDE, points.size()))
        - middle(Math.max(place - SIDE, first), place);
  }

  private double middle(int from, int to) {
    return Median.of(IntStream.range(from, to).mapToDouble(points::value).toArray());
  }
}
