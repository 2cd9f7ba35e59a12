package org.thumbseal.report;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import org.thumbseal.pipeline.CurvePoints.Point;
import org.thumbseal.pipeline.CurveReading;

/**
 * Keeps of a curve what a drawing can show: of each short stretch the first, lowest, highest and
 * last sample, so that no spike and no dip is lost. Memory is bounded by the width of the drawing.
 */
public final class TraceBuilder implements CurveReading.Taker {
  private final Span span;
  private final double width;
  private final List<Point> points = new ArrayList<>();
  private final List<Trace.Gap> gaps = new ArrayList<>();
  private long slot = Long.MIN_VALUE;
  private @Nullable Point lowest;
  private @Nullable Point highest;
  private @Nullable Point last;

  /**
   * A curve within a span of time, in so many stretches.
   *
   * @param span s since the origin of the curve
   */
  public TraceBuilder(Span span, int stretches) {
    this.span = span;
    this.width = (span.to() - span.from()) / stretches;
  }

  @Override
  public void point(Point point) {
    if (!span.contains(point.seconds())) {
      return;
    }
    long here = (long) Math.floor((point.seconds() - span.from()) / width);
    if (here != slot) {
      flush();
      slot = here;
      points.add(point);
    } else {
      lowest = lowest == null || point.kilopascals() < lowest.kilopascals() ? point : lowest;
      highest = highest == null || point.kilopascals() > highest.kilopascals() ? point : highest;
      last = point;
    }
  }

  @Override
  public void gap(double from, double to) {
    if (span.contains(from) || span.contains(to)) {
      flush();
      slot = Long.MIN_VALUE;
      if (gaps.size() < MOST_GAPS) {
        gaps.add(new Trace.Gap(from, to));
      }
    }
  }

  /** More would be no drawing any longer. */
  private static final int MOST_GAPS = 2_000;

  private void flush() {
    List<Point> rest = new ArrayList<>();
    for (Point point : new Point[] {lowest, highest, last}) {
      if (point != null && !rest.contains(point)) {
        rest.add(point);
      }
    }
    rest.sort((a, b) -> Double.compare(a.seconds(), b.seconds()));
    points.addAll(rest);
    lowest = null;
    highest = null;
    last = null;
  }

  /** What was kept. */
  public Trace trace() {
    flush();
    return points.isEmpty()
        ? Trace.none(Words.text("curve.empty"))
        : new Trace(points, gaps, Optional.empty());
  }
}
