package org.thumbseal.wire;

import java.util.regex.Pattern;

/**
 * What a matcher may have to try without looking at a character: at the end of a line, and where a
 * part of an expression has no length, nothing is looked at, so that looks alone bound nothing. Two
 * ways at each choice and so many rounds of each repetition, all multiplied, are the most.
 */
final class PatternEffort {
  private static final double MOST = 10_000;
  private static final Pattern REPEATED = Pattern.compile("\\{([0-9]+)");

  private PatternEffort() {}

  /** Refuses an expression that could take too long, whatever the line. */
  static void requireBounded(String expression) throws LineFormatException {
    if (expression.contains("\\Q") || ways(expression) * rounds(expression) > MOST) {
      throw new LineFormatException(
          "the expression /"
              + expression
              + "/ could take too long: fewer of | ? * and smaller numbers in {}, and no \\Q");
    }
  }

  /** Blanks may stand within a number where the expression allows for comments. */
  private static double rounds(String expression) {
    return REPEATED
        .matcher(expression.replace(" ", ""))
        .results()
        .mapToDouble(times -> Double.parseDouble(times.group(1)))
        .reduce(1, (one, other) -> one * Math.max(1, other));
  }

  private static double ways(String expression) {
    double ways = 1;
    char before = ' ';
    for (int i = 0; i < expression.length(); i++) {
      char c = expression.charAt(i);
      ways *= isChoice(before, c) ? 2 : 1;
      if (c == '\\') {
        i++;
      }
      before = c;
    }
    return ways;
  }

  /** A mark behind a repetition says how it is tried, and one behind a bracket begins a name. */
  private static boolean isChoice(char before, char c) {
    return switch (c) {
      case '|', '*' -> true;
      case '?' -> "(?*+}".indexOf(before) < 0;
      case '0' -> before == '{';
      default -> false;
    };
  }
}
