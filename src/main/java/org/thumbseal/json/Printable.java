package org.thumbseal.json;

/**
 * Makes text of unknown origin harmless on a terminal and in a log: one line, no escape sequences,
 * no characters that turn the reading direction.
 */
public final class Printable {
  private static final int LONGEST = 400;

  private Printable() {}

  /**
   * The text with every character that is not plainly visible written as {@code \}{@code uXXXX},
   * cut after 400 code points.
   */
  public static String line(String text) {
    StringBuilder out = new StringBuilder();
    text.codePoints().limit(LONGEST).forEach(c -> append(out, c));
    if (text.codePointCount(0, text.length()) > LONGEST) {
      out.append("...");
    }
    return out.toString();
  }

  /** As {@link #line}, and not cut: for a file that others read. */
  public static String whole(String text) {
    StringBuilder out = new StringBuilder(text.length());
    text.codePoints().forEach(c -> append(out, c));
    return out.toString();
  }

  /**
   * A JSON text that means the same, with every such character but the line feed written as its
   * escape; whoever pipes the answer into a program gets what there was.
   */
  public static String json(String text) {
    StringBuilder out = new StringBuilder(text.length());
    text.codePoints()
        .forEach(
            c -> {
              if (c == '\n' || visible(c)) {
                out.appendCodePoint(c);
              } else {
                Character.toString(c).chars().forEach(unit -> append(out, unit, "\\u%04x"));
              }
            });
    return out.toString();
  }

  /** A word of a command line that a person is to type or copy, as a shell of POSIX reads it. */
  public static String word(String text) {
    boolean plain = text.matches("[A-Za-z0-9_@%+=:,./-]+");
    return plain ? text : "'" + text.replace("'", "'\\''") + "'";
  }

  private static void append(StringBuilder out, int unit, String form) {
    out.append(String.format(java.util.Locale.ROOT, form, unit));
  }

  private static void append(StringBuilder out, int codePoint) {
    if (visible(codePoint)) {
      out.appendCodePoint(codePoint);
    } else {
      out.append(String.format(java.util.Locale.ROOT, "\\u%04X", codePoint));
    }
  }

  private static boolean visible(int codePoint) {
    return switch (Character.getType(codePoint)) {
      case Character.CONTROL,
          Character.FORMAT,
          Character.SURROGATE,
          Character.PRIVATE_USE,
          Character.UNASSIGNED,
          Character.LINE_SEPARATOR,
          Character.PARAGRAPH_SEPARATOR ->
          false;
      default -> true;
    };
  }
}
