package org.thumbseal.fuzz;

import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** What the program prints: nothing that a terminal obeys, nothing that turns the reading order. */
public final class Said {
  private static final Pattern OBEYED =
      Pattern.compile(
          "[\\x00-\\x08\\x0b-\\x1f\\x7f-\\x9f\\u200e\\u200f\\u2028\\u2029\\u202a-\\u202e\\u2066-\\u2069]");

  private Said() {}

  /** Fails where the text holds such a character; line feed and tab are allowed. */
  public static void requirePlain(String text) {
    Matcher found = OBEYED.matcher(text);
    if (found.find()) {
      throw new AssertionError(
          String.format(
              "prints U+%04X at %d of: %s", (int) text.charAt(found.start()), found.start(), text));
    }
  }

  /** Fails where it holds a line that was not meant for a person. */
  public static void requireNoTrace(String text) {
    if (text.contains("\tat ") || text.contains("an error of this program")) {
      throw new AssertionError("says a stack trace or an error of its own: " + text);
    }
  }
}
