package org.thumbseal.report;

import org.thumbseal.care.Urgency;

/** How soon something is due, told by a shape, so that a grey print tells it too. */
final class UrgencyShape {
  private UrgencyShape() {}

  /** A bar that is full when the day is over, and the emptier the more time there is. */
  static Markup of(Urgency urgency) {
    Markup svg =
        new Markup().open("svg", "class", "sign", "viewBox", "0 0 12 12", "aria-hidden", "true");
    svg.shape("rect", "x", "3", "y", "1", "width", "6", "height", "10", "class", "frame");
    int height = filled(urgency);
    if (height > 0) {
      String top = Integer.toString(11 - height);
      String tall = Integer.toString(height);
      svg.shape("rect", "x", "3", "y", top, "width", "6", "height", tall, "class", "fill");
    }
    return svg.close();
  }

  private static int filled(Urgency urgency) {
    return switch (urgency) {
      case OVERDUE -> 10;
      case THIS_WEEK -> 6;
      case THIS_MONTH -> 3;
      case LATER -> 0;
    };
  }
}
