package org.thumbseal.report;

import java.util.List;

/** What the signs of a course mean, drawn as they stand there. */
final class CourseKey {
  static final List<String> LINES =
      List.of("u", "limit", "trend", "crossing", "step", "change", "corrected");

  private static final String INK = "#111111";

  private CourseKey() {}

  static Markup mark(String shown) {
    Markup svg = frame();
    TestMark.draw(svg, shown, 13, 8, 4);
    return svg.close();
  }

  static Markup line(String what) {
    Markup svg = frame();
    switch (what) {
      case "u" -> stroke(svg, "M13 2v12m-3 0h6m-6 -12h6", "#555555", "1");
      case "limit" ->
          svg.shape(
              "path",
              "d",
              "M1 8h24",
              "stroke",
              "#7a1010",
              "stroke-width",
              "1.8",
              "stroke-dasharray",
              "10 3");
      case "trend" -> {
        svg.shape("path", "d", "M1 3h24v10h-24Z", "fill", "#d9d9d9");
        stroke(svg, "M1 8h24", "#0b3d78", "2.2");
      }
      case "crossing" -> {
        stroke(svg, "M4 9h16", INK, "4");
        stroke(svg, "M4 3v12", INK, "2");
        svg.shape("path", "d", "M15 0h10l-5 9Z", "fill", INK);
      }
      case "step" -> stroke(svg, "M11 0l4 5l-4 5l4 6", INK, "1.1");
      case "change" -> {
        stroke(svg, "M13 1v14", INK, "0.7");
        svg.shape("path", "d", "M9 15h8l-4 -7Z", "fill", INK);
      }
      default ->
          svg.shape("circle", "cx", "13", "cy", "8", "r", "6.5", "fill", "none", "stroke", INK);
    }
    return svg.close();
  }

  private static Markup frame() {
    return new Markup().open("svg", "viewBox", "0 0 26 16", "aria-hidden", "true");
  }

  private static void stroke(Markup svg, String path, String colour, String width) {
    svg.shape("path", "d", path, "fill", "none", "stroke", colour, "stroke-width", width);
  }
}
