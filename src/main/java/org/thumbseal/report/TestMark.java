package org.thumbseal.report;

/** The sign of one test in a course: its form alone says how it came out. */
final class TestMark {
  private static final String INK = "#111111";

  private TestMark() {}

  /** Draws it about a point, of the given half width. */
  static void draw(Markup svg, String shown, double x, double y, double r) {
    switch (shown) {
      case "pass" ->
          svg.shape(
              "circle",
              "cx",
              Markup.at(x),
              "cy",
              Markup.at(y),
              "r",
              Markup.at(r),
              "fill",
              "#0b5a2b");
      case "fail" -> path(svg, square(x, y, r), "#8f1414", "#8f1414");
      case "inconclusive" -> path(svg, diamond(x, y, r * 1.4), "#ffffff", "#5c4300");
      case "void" -> path(svg, square(x, y, r) + cross(x, y, r), "#ffffff", INK);
      default -> path(svg, triangle(x, y, r * 1.2), "#ffffff", INK);
    }
  }

  private static void path(Markup svg, String path, String fill, String stroke) {
    svg.shape("path", "d", path, "fill", fill, "stroke", stroke, "stroke-width", "1.5");
  }

  private static String square(double x, double y, double r) {
    return from(x - r, y - r)
        + "h"
        + Markup.at(2 * r)
        + "v"
        + Markup.at(2 * r)
        + "h"
        + Markup.at(-2 * r)
        + "Z";
  }

  private static String cross(double x, double y, double r) {
    return from(x - r, y + r) + "l" + Markup.at(2 * r) + " " + Markup.at(-2 * r);
  }

  private static String diamond(double x, double y, double r) {
    String side = Markup.at(r);
    String back = Markup.at(-r);
    return from(x, y - r)
        + "l"
        + side
        + " "
        + side
        + "l"
        + back
        + " "
        + side
        + "l"
        + back
        + " "
        + back
        + "Z";
  }

  private static String triangle(double x, double y, double r) {
    return from(x, y - r)
        + "l"
        + Markup.at(r)
        + " "
        + Markup.at(2 * r)
        + "h"
        + Markup.at(-2 * r)
        + "Z";
  }

  private static String from(double x, double y) {
    return "M" + Markup.at(x) + " " + Markup.at(y);
  }
}
