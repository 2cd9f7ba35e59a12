package org.thumbseal.report;

/**
 * Where times and vacuums stand in a drawing.
 *
 * @param area the rectangle that they stand in
 * @param span times from its left edge to its right one, s
 * @param bottom vacuum at its lower edge, kPa
 * @param top vacuum at its upper edge, kPa
 */
record Plot(Area area, Span span, double bottom, double top) {
  private static final double BELOW = 9;

  /** A rectangle, in units of the drawing. */
  record Area(double left, double top, double right, double bottom) {
    double width() {
      return right - left;
    }
  }

  double x(double seconds) {
    double share = (seconds - span.from()) / (span.to() - span.from());
    return area.left() + area.width() * share;
  }

  double y(double kilopascals) {
    double share = (kilopascals - bottom) / (top - bottom);
    return area.bottom() - (area.bottom() - area.top()) * share;
  }

  /** The same, kept within the rectangle. */
  double inside(double y) {
    return Math.max(area.top(), Math.min(area.bottom(), y));
  }

  /** The same, but noise about the zero may go a little below the axis. */
  double near(double y) {
    return Math.max(area.top(), Math.min(area.bottom() + BELOW, y));
  }

  double clippedX(double seconds) {
    return Math.max(area.left(), Math.min(area.right(), x(seconds)));
  }

  boolean shows(double seconds) {
    return span.contains(seconds);
  }
}
