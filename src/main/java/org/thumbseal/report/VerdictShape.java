package org.thumbseal.report;

import java.util.Set;

/** A sign for each verdict that is told from the others by its form alone. */
final class VerdictShape {
  private static final Set<String> KNOWN = Set.of("pass", "fail", "inconclusive", "invalid");

  private VerdictShape() {}

  static boolean isKnown(String verdict) {
    return KNOWN.contains(verdict);
  }

  /** Draws the sign of a verdict, or of {@code void}. */
  static Markup of(String verdict) {
    Markup svg = new Markup();
    svg.open("svg", "class", "sign", "viewBox", "0 0 100 100", "aria-hidden", "true");
    switch (verdict) {
      case "pass" -> pass(svg);
      case "fail" -> fail(svg);
      case "inconclusive" -> inconclusive(svg);
      case "void" -> voided(svg);
      default -> invalid(svg);
    }
    return svg.close();
  }

  /** A full disc with a tick. */
  private static void pass(Markup svg) {
    svg.shape("circle", "cx", "50", "cy", "50", "r", "47", "fill", "#0b5a2b");
    stroke(svg, "M26 52L43 70L75 32", "#ffffff", "11");
  }

  /** A full octagon with a cross. */
  private static void fail(Markup svg) {
    svg.shape("path", "d", "M31 3H69L97 31V69L69 97H31L3 69V31Z", "fill", "#8f1414");
    stroke(svg, "M31 31L69 69M69 31L31 69", "#ffffff", "11");
  }

  /** An empty diamond with a wave between two lines: on neither side. */
  private static void inconclusive(Markup svg) {
    stroke(svg, "M50 5L95 50L50 95L5 50Z", "#5c4300", "7");
    stroke(svg, "M29 55C37 38 44 42 50 50S63 62 71 45", "#5c4300", "7");
  }

  /** An empty triangle with a stroke and a dot. */
  private static void invalid(Markup svg) {
    stroke(svg, "M50 8L95 90H5Z", "#333333", "7");
    stroke(svg, "M50 36V60M50 74V76", "#333333", "9");
  }

  /** An empty square, struck out. */
  private static void voided(Markup svg) {
    stroke(svg, "M8 8H92V92H8Z", "#111111", "7");
    stroke(svg, "M8 92L92 8", "#111111", "9");
  }

  private static void stroke(Markup svg, String path, String colour, String width) {
    svg.shape(
        "path",
        "d",
        path,
        "fill",
        "none",
        "stroke",
        colour,
        "stroke-width",
        width,
        "stroke-linecap",
        "round",
        "stroke-linejoin",
        "round");
  }
}
