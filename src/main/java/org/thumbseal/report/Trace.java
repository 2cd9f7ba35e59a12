package org.thumbseal.report;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.thumbseal.pipeline.CurvePoints.Point;

/**
 * The curve of a test, thin enough to be drawn.
 *
 * @param points in order of time
 * @param gaps stretches in which samples are missing
 * @param missing why there is no curve; absent where there is one
 */
public record Trace(List<Point> points, List<Gap> gaps, Optional<String> missing) {
  /** A gap begins at the time of a sample, s. */
  private static final double EPSILON = 1e-9;

  /**
   * Samples are missing.
   *
   * @param from s since the origin of the curve
   * @param to likewise
   */
  public record Gap(double from, double to) {}

  /** Keeps copies. */
  public Trace {
    points = List.copyOf(points);
    gaps = List.copyOf(gaps);
  }

  /** No curve, and why. */
  public static Trace none(String why) {
    return new Trace(List.of(), List.of(), Optional.of(why));
  }

  /** The same in fewer stretches. */
  Trace thinned(Span span, int stretches) {
    if (missing.isPresent()) {
      return this;
    }
    TraceBuilder thin = new TraceBuilder(span, stretches);
    int next = 0;
    for (Gap gap : gaps) {
      while (next < points.size() && points.get(next).seconds() <= gap.from() + EPSILON) {
        thin.point(points.get(next++));
      }
      thin.gap(gap.from(), gap.to());
    }
    points.subList(next, points.size()).forEach(thin::point);
    return thin.trace();
  }

  /** The stretches without a gap in them. */
  List<List<Point>> pieces() {
    List<List<Point>> pieces = new ArrayList<>();
    int from = 0;
    for (Gap gap : gaps) {
      int to = from;
      while (to < points.size() && points.get(to).seconds() <= gap.from() + EPSILON) {
        to++;
      }
      pieces.add(points.subList(from, to));
      from = to;
    }
    pieces.add(points.subList(from, points.size()));
    return pieces.stream().filter(piece -> !piece.isEmpty()).toList();
  }
}
