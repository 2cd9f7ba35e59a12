package org.thumbseal.report;

/**
 * The limits as they were applied: the rise has to cross its level left of the post that stands at
 * the end of its time, and the vacuum has to go on to the upper line.
 *
 * @param plot where it is drawn
 * @param shape of the test
 * @param low whether the curve stays below the upper line: then there is room above it
 */
record Corridor(Plot plot, TestShape shape, boolean low) {
  private static final String LIMIT = "#7a1010";
  private static final double HATCH = 9;

  /** Lines and the field that a good pump's curve stays out of. */
  void draw(Markup svg) {
    if (!shape.isBlocked()) {
      return;
    }
    double until = until();
    shape.riseLevel().ifPresent(level -> shape.riseSeconds().ifPresent(t -> gate(svg, level, t)));
    shape.maximum().ifPresent(level -> maximum(svg, level, until));
  }

  /** Once the pump is off nothing is asked of the vacuum. */
  private double until() {
    return plot.clippedX(Math.max(shape.pulledUntil(), shape.riseSeconds().orElse(0.0)));
  }

  private void gate(Markup svg, double level, double seconds) {
    double left = plot.clippedX(0);
    double post = plot.clippedX(seconds);
    double top = plot.inside(plot.y(level));
    double foot = plot.inside(plot.y(0));
    double until = until();
    svg.shape(
        "path",
        "class",
        "forbidden",
        "d",
        hatched(new Plot.Area(post, top, until, foot)),
        "fill",
        "none",
        "stroke",
        "#b9b9b9",
        "stroke-width",
        "0.6");
    limit(
        svg,
        "rise-limit",
        "M"
            + Markup.at(left)
            + " "
            + Markup.at(top)
            + "H"
            + Markup.at(post)
            + "V"
            + Markup.at(foot));
  }

  private void maximum(Markup svg, double level, double until) {
    String y = Markup.at(plot.inside(plot.y(level)));
    limit(
        svg, "maximum-limit", "M" + Markup.at(plot.clippedX(0)) + " " + y + "H" + Markup.at(until));
  }

  private static void limit(Markup svg, String name, String path) {
    svg.shape(
        "path",
        "class",
        name,
        "d",
        path,
        "fill",
        "none",
        "stroke",
        LIMIT,
        "stroke-width",
        "1.6",
        "stroke-dasharray",
        "9 3");
  }

  /** Slanting lines, each cut where it leaves the rectangle. */
  private static String hatched(Plot.Area area) {
    StringBuilder path = new StringBuilder("M0 0");
    double height = area.bottom() - area.top();
    for (double x = area.left() - height; x < area.right(); x += HATCH) {
      double from = Math.max(0, area.left() - x);
      double to = Math.min(height, area.right() - x);
      if (to > from) {
        path.append('M').append(Markup.at(x + from)).append(' ');
        path.append(Markup.at(area.bottom() - from));
        path.append('L').append(Markup.at(x + to)).append(' ');
        path.append(Markup.at(area.bottom() - to));
      }
    }
    return path.toString();
  }

  /** What the lines mean; drawn last, so that the curve does not cross the words. */
  void label(Markup svg) {
    if (!shape.isBlocked()) {
      return;
    }
    shape.riseSeconds().ifPresent(t -> shape.rise().ifPresent(rise -> labelRise(svg, rise, t)));
    shape.maximum().ifPresent(level -> labelMaximum(svg, level));
  }

  private void labelRise(Markup svg, double rise, double seconds) {
    String text = Words.text("limit.rise", rise, seconds) + adjusted();
    say(svg, text, plot.clippedX(seconds) + 6, plot.inside(plot.y(0)) - 8);
  }

  private void labelMaximum(Markup svg, double level) {
    double y = plot.inside(plot.y(level)) + (low ? -5 : 13);
    String text = Words.text("limit.maximum", level) + adjusted();
    say(svg, text, until() - 6 * text.length(), y);
  }

  private String adjusted() {
    return shape.adjustedTo().map(kpa -> Words.text("limit.adjusted", kpa)).orElse("");
  }

  private static void say(Markup svg, String text, double x, double y) {
    svg.element(
        "text",
        text,
        "x",
        Markup.at(x),
        "y",
        Markup.at(y),
        "stroke",
        "#ffffff",
        "stroke-width",
        "4",
        "paint-order",
        "stroke",
        "fill",
        LIMIT);
  }
}
