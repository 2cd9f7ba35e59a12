package org.thumbseal.report;

import java.util.ArrayDeque;
import java.util.Deque;
import java.util.Locale;
import org.thumbseal.json.Printable;

/**
 * Writes HTML and SVG. Whatever comes from outside goes in by {@link #text} or as the value of an
 * attribute, and both are made harmless here and nowhere else.
 */
final class Markup {
  private static final int REPLACEMENT = 0xFFFD;
  private static final double FIXED_BELOW = 1e12;

  private final StringBuilder out = new StringBuilder();
  private final Deque<String> open = new ArrayDeque<>();

  /** Begins an element; attributes are names and values by turns. */
  Markup open(String name, String... attributes) {
    tag(name, attributes).append('>');
    open.push(name);
    return this;
  }

  /** Ends the element that was begun last. */
  Markup close() {
    out.append("</").append(open.pop()).append('>');
    return this;
  }

  /** An element with text in it. */
  Markup element(String name, String text, String... attributes) {
    return open(name, attributes).text(text).close();
  }

  /** An element of HTML that holds nothing, such as {@code meta}. */
  Markup empty(String name, String... attributes) {
    tag(name, attributes).append('>');
    return this;
  }

  /** An element of SVG that holds nothing. */
  Markup shape(String name, String... attributes) {
    tag(name, attributes).append("/>");
    return this;
  }

  /** Text of any origin. */
  Markup text(String text) {
    out.append(escaped(Printable.line(text)));
    return this;
  }

  /** A new line in the file, for those who look at it as text. */
  Markup line() {
    out.append('\n');
    return this;
  }

  /** Markup that was written by this class. */
  Markup add(Markup other) {
    out.append(other.out);
    return this;
  }

  /** Words of this program that are no markup: a declaration, a style sheet, a script. */
  Markup own(String constant) {
    out.append(constant);
    return this;
  }

  private StringBuilder tag(String name, String... attributes) {
    out.append('<').append(name);
    for (int i = 0; i < attributes.length; i += 2) {
      out.append(' ').append(attributes[i]).append("=\"");
      out.append(escaped(attributes[i + 1])).append('"');
    }
    return out;
  }

  private static String escaped(String text) {
    StringBuilder safe = new StringBuilder(text.length());
    text.codePoints()
        .forEach(
            c -> {
              switch (c) {
                case '&' -> safe.append("&amp;");
                case '<' -> safe.append("&lt;");
                case '>' -> safe.append("&gt;");
                case '"' -> safe.append("&quot;");
                case '\'' -> safe.append("&#39;");
                default -> safe.appendCodePoint(isSafe(c) ? c : REPLACEMENT);
              }
            });
    return safe.toString();
  }

  /** In a text such characters were written out before; in a value they have no business. */
  private static boolean isSafe(int codePoint) {
    return switch (Character.getType(codePoint)) {
      case Character.CONTROL,
          Character.FORMAT,
          Character.SURROGATE,
          Character.LINE_SEPARATOR,
          Character.PARAGRAPH_SEPARATOR ->
          false;
      default -> true;
    };
  }

  /** A coordinate or a number for people, never in the machine's own manner. */
  static String number(String format, double value) {
    return String.format(Locale.ROOT, format, value);
  }

  /** A coordinate. */
  static String at(double value) {
    return fixed(value, 2);
  }

  /** A coordinate in a small drawing. */
  static String roughly(double value) {
    return fixed(value, 1);
  }

  /** Thousands of these are in a page: the formatter would take a third of the time of all. */
  private static String fixed(double value, int places) {
    double scaled = value * (places == 1 ? 10 : 100);
    if (!(Math.abs(scaled) < FIXED_BELOW)) {
      return number("%." + places + "f", value);
    }
    long all = Math.round(scaled);
    String digits = Long.toString(Math.abs(all));
    String padded = "0".repeat(Math.max(0, places + 1 - digits.length())) + digits;
    int point = padded.length() - places;
    return (all < 0 ? "-" : "") + padded.substring(0, point) + '.' + padded.substring(point);
  }

  @Override
  public String toString() {
    if (!open.isEmpty()) {
      throw new IllegalStateException("not closed: " + open);
    }
    return out.toString();
  }
}
