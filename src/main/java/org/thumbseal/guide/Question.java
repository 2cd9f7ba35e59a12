package org.thumbseal.guide;

import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.stream.IntStream;

/**
 * One question.
 *
 * @param code its name in documents
 * @param kind what it is about
 * @param text as it is asked, one line
 * @param choices all there are; of a caution the one that acknowledges it
 */
public record Question(String code, Kind kind, String text, List<Choice> choices) {
  /** What a question is about. */
  public enum Kind {
    /** Something to heed; it is not asked but acknowledged. */
    CAUTION,
    /** Somebody looks at cord, plug or fuse, or switches the pump on. */
    MAINS,
    /** Anything else. */
    PLAIN
  }

  /** Keeps a copy. */
  public Question {
    choices = List.copyOf(choices);
  }

  static Question caution(String code, String text, String next) {
    return new Question(code, Kind.CAUTION, text, List.of(Choice.yes(next)));
  }

  static Question mains(String code, String text, Choice... choices) {
    return new Question(code, Kind.MAINS, text, List.of(choices));
  }

  static Question plain(String code, String text, Choice... choices) {
    return new Question(code, Kind.PLAIN, text, List.of(choices));
  }

  /** Whether the answers have words of their own, and are offered with numbers. */
  public boolean isChoice() {
    return choices.stream().anyMatch(c -> !c.words().equals(c.code()));
  }

  /** The answer that a person means: its code, the letter it begins with, or its number. */
  public Optional<Choice> choice(String typed) {
    String said = typed.strip().toLowerCase(Locale.ROOT);
    return IntStream.range(0, choices.size())
        .filter(i -> isMeant(choices.get(i), i + 1, said))
        .mapToObj(choices::get)
        .findFirst();
  }

  private boolean isMeant(Choice choice, int number, String said) {
    boolean letter = !isChoice() && said.equals(choice.code().substring(0, 1));
    boolean counted = isChoice() && said.equals(Integer.toString(number));
    return letter || counted || said.equals(choice.code());
  }

  /** What may be typed, in words. */
  public String offered() {
    List<String> codes = choices.stream().map(Choice::code).toList();
    return isChoice() ? "1 to " + codes.size() : String.join(" or ", codes);
  }
}
