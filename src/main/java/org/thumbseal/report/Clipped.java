package org.thumbseal.report;

import java.util.ArrayList;
import java.util.List;

/** What is cut so that a sheet holds it; that it was cut shows. */
final class Clipped {
  private Clipped() {}

  /** So many characters at most, the last one a mark that there was more. */
  static String text(String text, int longest) {
    if (text.codePointCount(0, text.length()) <= longest) {
      return text;
    }
    return text.substring(0, text.offsetByCodePoints(0, longest - 1)).strip() + "\u2026";
  }

  /** The same, but the end is kept: of a question it is what was asked. */
  static String end(String text, int longest) {
    int length = text.codePointCount(0, text.length());
    if (length <= longest) {
      return text;
    }
    String end = text.substring(text.offsetByCodePoints(0, length - longest + 1));
    return "\u2026 " + end.replaceFirst("^[^\\p{L}\\p{N}]+", "");
  }

  /** So many lines at most, and how many there were more. */
  static List<String> lines(List<String> lines, int most) {
    if (lines.size() <= most) {
      return lines;
    }
    List<String> some = new ArrayList<>(lines.subList(0, most));
    some.add(Words.text("refer.more", lines.size() - most));
    return some;
  }
}
