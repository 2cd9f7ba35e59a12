package org.thumbseal.report;

import java.util.List;
import java.util.Map;
import java.util.TreeMap;

/**
 * A sign for each verdict that is told from the others by its form alone, on the live page and on
 * paper. A ring is the seal: whole, broken, not closed yet, or no ring at all.
 *
 * @param form outline, as the path of an SVG in a square of 100
 * @param sign what stands in it, likewise; both are lines of the width {@link #WIDTH}
 */
public record VerdictShape(String form, String sign) {
  /** Of a line, where the square has 100. */
  public static final int WIDTH = 11;

  private static final String VOID = "void";
  private static final VerdictShape INVALID = new VerdictShape("M12 12h76v76h-76z", "M30 50h40");

  private static final Map<String, VerdictShape> SHAPES =
      Map.of(
          "pass",
          new VerdictShape("M50 8a42 42 0 1 0 .1 0", "M31 52l13 14 26-31"),
          "fail",
          new VerdictShape("M66 11a42 42 0 1 0 23 23", "M32 32l36 36M68 32L32 68"),
          "inconclusive",
          new VerdictShape("M50 8a42 42 0 0 1 0 84", "M50 34v20M50 70v.5"),
          "invalid",
          INVALID,
          VOID,
          new VerdictShape("M27 27h46v46h-46z", "M8 92L92 8"));

  /** Where there is colour, it says the same once more. */
  private static final Map<String, String> COLOURS =
      Map.of("pass", "#0b5a2b", "fail", "#8f1414", "inconclusive", "#5c4300");

  private static final String INK = "#222222";

  /** All of them, by the word in the document, and that of a result that is void. */
  public static Map<String, VerdictShape> all() {
    return new TreeMap<>(SHAPES);
  }

  static boolean isKnown(String verdict) {
    return SHAPES.containsKey(verdict) && !verdict.equals(VOID);
  }

  /** Draws the sign of a verdict, or of {@code void}. */
  static Markup of(String verdict) {
    VerdictShape shape = SHAPES.getOrDefault(verdict, INVALID);
    Markup svg = new Markup();
    svg.open("svg", "class", "sign", "viewBox", "0 0 100 100", "aria-hidden", "true");
    svg.open("g", attributes(COLOURS.getOrDefault(verdict, INK)));
    List.of(shape.form, shape.sign).forEach(path -> svg.shape("path", "d", path));
    return svg.close().close();
  }

  private static String[] attributes(String colour) {
    return new String[] {
      "fill", "none",
      "stroke", colour,
      "stroke-width", String.valueOf(WIDTH),
      "stroke-linecap", "round",
      "stroke-linejoin", "round"
    };
  }
}
