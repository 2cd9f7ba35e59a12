package org.thumbseal.report;

import java.util.ArrayList;
import java.util.List;

/** Text broken between words where a line would be too long. */
final class Paragraph {
  private static final int WIDTH = 100;

  private Paragraph() {}

  /** The lines; the first begins with a lead, the others stand below what comes after it. */
  static List<String> lines(String lead, String text) {
    List<String> lines = new ArrayList<>();
    StringBuilder line = new StringBuilder(lead);
    for (String word : text.split(" ", -1)) {
      if (line.length() + word.length() > WIDTH) {
        lines.add(line.toString().stripTrailing());
        line = new StringBuilder(" ".repeat(lead.length()));
      }
      line.append(word).append(' ');
    }
    lines.add(line.toString().stripTrailing());
    return lines;
  }
}
