package org.thumbseal.wire;

import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.regex.PatternSyntaxException;

/**
 * Numbers in the groups {@code p} and {@code t} of a regular expression that has to match the whole
 * line.
 *
 * <p>The expression is the user's and the line a stranger's: together they could take years. So the
 * matcher may look at characters a limited number of times, and a line that needs more does not
 * fit. What it may try between two looks is bounded by {@link PatternEffort}.
 */
record PatternCells(Pattern pattern, boolean timed) implements LineCells {
  private static final int MOST_LOOKS = 20_000;

  /**
   * Reads an expression.
   *
   * @throws LineFormatException if it is none, or has not the groups it needs
   */
  static PatternCells of(String expression, boolean timed) throws LineFormatException {
    try {
      PatternEffort.requireBounded(expression);
      requireGroup(expression, "p", "the pressure");
      if (timed) {
        requireGroup(expression, "t", "the time");
      }
      return new PatternCells(Pattern.compile(expression), timed);
    } catch (PatternSyntaxException e) {
      throw new LineFormatException(
          "not a regular expression: " + e.getDescription() + " in '" + expression + "'");
    }
  }

  private static void requireGroup(String expression, String group, String what)
      throws LineFormatException {
    Matcher nothing = Pattern.compile("|" + expression).matcher("");
    try {
      nothing.lookingAt();
      nothing.group(group);
    } catch (IllegalArgumentException e) {
      throw new LineFormatException(
          "no group for " + what + " in /" + expression + "/: put it into (?<" + group + ">...)");
    }
  }

  @Override
  public Optional<Cells> of(String line) {
    try {
      Matcher matcher = pattern.matcher(new Limited(line, 0, line.length(), new int[1]));
      return matcher.matches() ? cells(matcher) : Optional.empty();
    } catch (TooManyLooks | StackOverflowError e) {
      return Optional.empty();
    }
  }

  private Optional<Cells> cells(Matcher matcher) {
    Optional<String> time = timed ? Optional.ofNullable(matcher.group("t")) : Optional.empty();
    return Optional.ofNullable(matcher.group("p")).map(p -> new Cells(p.strip(), time));
  }

  /** Says that a match takes too long. */
  private static final class TooManyLooks extends RuntimeException {
    private static final long serialVersionUID = 1L;

    TooManyLooks() {
      super("", null, false, false);
    }
  }

  /** A line that counts how often it is looked at, its parts included. */
  private static final class Limited implements CharSequence {
    private final String line;
    private final int from;
    private final int to;
    private final int[] looks;

    Limited(String line, int from, int to, int[] looks) {
      this.line = line;
      this.from = from;
      this.to = to;
      this.looks = looks;
    }

    @Override
    public int length() {
      return to - from;
    }

    @Override
    public char charAt(int index) {
      looks[0]++;
      if (looks[0] > MOST_LOOKS) {
        throw new TooManyLooks();
      }
      return line.charAt(from + index);
    }

    @Override
    public CharSequence subSequence(int begin, int end) {
      return new Limited(line, from + begin, from + end, looks);
    }

    @Override
    public String toString() {
      return line.substring(from, to);
    }
  }
}
