package org.thumbseal.exchange;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * The words of a line: {@code heading = word word "several words"}. In quotes a quote is doubled.
 *
 * @param heading before the equals sign
 * @param words after it
 */
record MappingTokens(String heading, List<Token> words) {
  private static final String QUOTED = "\"((?:[^\"]|\"\")*)\"";
  private static final Pattern LINE =
      Pattern.compile("\\s*(?:" + QUOTED + "|([^\"=][^=]*?))\\s*=(.*)");
  private static final Pattern WORD =
      Pattern.compile("\\s*(?:" + QUOTED + "|([^\\s\"]+))(?=\\s|$)");

  /**
   * A word.
   *
   * @param text of it
   * @param quoted whether it stood in quotes
   */
  record Token(String text, boolean quoted) {}

  /** The words of a line; empty where it is not of this form. */
  static Optional<MappingTokens> of(String line) {
    Matcher matcher = LINE.matcher(line);
    if (!matcher.matches()) {
      return Optional.empty();
    }
    return words(matcher.group(3)).map(words -> new MappingTokens(token(matcher).text(), words));
  }

  private static Optional<List<Token>> words(String text) {
    List<Token> words = new ArrayList<>();
    Matcher matcher = WORD.matcher(text);
    int end = 0;
    while (matcher.find() && matcher.start() == end) {
      words.add(token(matcher));
      end = matcher.end();
    }
    return text.substring(end).isBlank() ? Optional.of(words) : Optional.empty();
  }

  private static Token token(Matcher matcher) {
    String quoted = matcher.group(1);
    return quoted == null
        ? new Token(String.valueOf(matcher.group(2)), false)
        : new Token(quoted.replace("\"\"", "\""), true);
  }
}
