package org.thumbseal.capture;

/**
 * Text of a file as it may stand in a message of one line: short and without control characters.
 */
final class Quote {
  private static final int LONGEST = 120;

  private Quote() {}

  static String of(String text) {
    String line = text.replaceAll("\\p{Cntrl}+", " ");
    return line.length() <= LONGEST ? line : line.substring(0, LONGEST) + "...";
  }
}
