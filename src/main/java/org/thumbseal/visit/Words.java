package org.thumbseal.visit;

import java.util.Optional;

/** Words of a person, made fit for one line of a file that has to read back as the same words. */
final class Words {
  private static final int LONGEST = 200;
  private static final int REPLACEMENT = 0xFFFD;

  private Words() {}

  /** One line of whole characters, 200 at most; empty where nothing is left. */
  static Optional<String> line(String text) {
    StringBuilder line = new StringBuilder();
    text.replaceAll("[\\p{Cc}\\p{Zl}\\p{Zp}]+", " ")
        .strip()
        .codePoints()
        .limit(LONGEST)
        .map(c -> Character.getType(c) == Character.SURROGATE ? REPLACEMENT : c)
        .forEach(line::appendCodePoint);
    return Optional.of(line.toString().strip()).filter(words -> !words.isEmpty());
  }
}
