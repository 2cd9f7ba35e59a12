package org.thumbseal.report;

import java.util.List;
import org.thumbseal.pipeline.CurvePoints.Point;

/** A curve of the size of a stamp, with its two limits: to see at a glance which one is odd. */
final class SmallCurve {
  private static final double WIDTH = 220;
  private static final double HEIGHT = 110;
  private static final int STRETCHES = 70;

  /** The same scale for all, so that they can be compared, kPa. */
  private static final double TOP = 105;

  private static final String INK = "#111111";

  private final TestShape shape;
  private final Plot plot;
  private final Markup svg = new Markup();

  private SmallCurve(Report report) {
    shape = new TestShape(report.document());
    plot = new Plot(new Plot.Area(2, 2, WIDTH - 2, HEIGHT - 4), shape.span(), -4, TOP);
  }

  static Markup of(Report report) {
    return new SmallCurve(report).drawn(report);
  }

  private Markup drawn(Report report) {
    svg.open("svg", "class", "small", "viewBox", "0 0 " + WIDTH + " " + HEIGHT, "role", "img");
    svg.element("title", Words.text("curve.title"));
    path("M2 " + Markup.at(plot.y(0)) + "H" + (WIDTH - 2), "#999999", "1");
    limits();
    Trace trace = report.trace().thinned(shape.span(), STRETCHES);
    trace.pieces().forEach(this::curve);
    trace.missing().ifPresent(why -> missing());
    if (report.standing().voided().isPresent()) {
      path("M2 " + HEIGHT + "L" + WIDTH + " 2", INK, "3");
    }
    return svg.close();
  }

  private void limits() {
    if (shape.isBlocked()) {
      shape
          .riseLevel()
          .ifPresent(
              level -> shape.riseSeconds().ifPresent(seconds -> gate(plot.y(level), seconds)));
      shape.maximum().ifPresent(level -> across(plot.y(level), shape.pulledUntil()));
    }
  }

  private void gate(double y, double seconds) {
    String foot = "V" + Markup.at(plot.y(0));
    path(from(y) + "H" + Markup.at(plot.clippedX(seconds)) + foot, "#7a1010", "1.2");
  }

  private void across(double y, double seconds) {
    path(from(y) + "H" + Markup.at(plot.clippedX(seconds)), "#7a1010", "1.2");
  }

  private String from(double y) {
    return "M" + Markup.at(plot.clippedX(0)) + " " + Markup.at(plot.inside(y));
  }

  private void curve(List<Point> points) {
    StringBuilder path = new StringBuilder();
    for (Point point : points) {
      path.append(path.isEmpty() ? 'M' : 'L').append(Markup.roughly(plot.x(point.seconds())));
      double y = plot.inside(plot.y(point.kilopascals()));
      path.append(' ').append(Markup.roughly(y));
    }
    path(path.toString(), "#0b3d78", "2");
  }

  private void missing() {
    svg.element(
        "text",
        Words.text("curve.none"),
        "x",
        "110",
        "y",
        "60",
        "text-anchor",
        "middle",
        "font-size",
        "16");
  }

  private void path(String path, String colour, String width) {
    svg.shape("path", "d", path, "fill", "none", "stroke", colour, "stroke-width", width);
  }
}
