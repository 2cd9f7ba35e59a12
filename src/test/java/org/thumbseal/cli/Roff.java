package org.thumbseal.cli;

import java.util.Locale;

/** Text as a manual page takes it: macros of man(7), and nothing in a text that acts as one. */
final class Roff {
  private final StringBuilder text = new StringBuilder();

  void heading(String title) {
    text.append(".SH \"").append(escaped(title.toUpperCase(Locale.ROOT))).append("\"\n");
  }

  /** The first line of a page, with what its top and bottom show. */
  void title(String name, String date, String program) {
    text.append(
        ".TH \"%s\" 1 \"%s\" \"%s\" \"Thumbseal\"\n"
            .formatted(escaped(name.toUpperCase(Locale.ROOT)), date, escaped(program)));
    // Nothing is pulled apart at hyphens or set with both edges straight: options stay whole.
    text.append(".nh\n.ad l\n");
  }

  void paragraph(String line) {
    text.append(".PP\n").append(line(line));
  }

  /** Words as they would be typed. */
  void bold(String words) {
    text.append("\\fB").append(escaped(words)).append("\\fR\n");
  }

  void plain(String words) {
    text.append(line(words));
  }

  /** A line of its own, with its spaces. */
  void asTyped(Iterable<String> lines) {
    text.append(".nf\n");
    lines.forEach(each -> text.append(line(each)));
    text.append(".fi\n");
  }

  /** What {@link #plain} says next is set in below the term. */
  void term(String name) {
    text.append(".TP\n");
    bold(name);
  }

  private static String line(String words) {
    return (words.startsWith(".") ? "\\&" : "") + escaped(words) + "\n";
  }

  /** Backslash, apostrophe, accent and caret would act or turn into their typographic kin. */
  static String escaped(String words) {
    return words
        .replace("\\", "\\e")
        .replace("-", "\\-")
        .replace("'", "\\(aq")
        .replace("`", "\\(ga")
        .replace("^", "\\(ha")
        .replace("~", "\\(ti")
        .replace("\"", "\\(dq");
  }

  @Override
  public String toString() {
    return text.toString();
  }
}
