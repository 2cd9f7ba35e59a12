package org.thumbseal.guide;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Stream;

/** All questions and all outcomes, by their codes. */
public final class Guide {
  private static final Map<String, Question> QUESTIONS = allQuestions();
  private static final Map<String, Outcome> OUTCOMES = allOutcomes();

  private Guide() {}

  private static Map<String, Question> allQuestions() {
    Map<String, Question> all = new LinkedHashMap<>();
    Stream.of(Begin.QUESTIONS, DoesNotStart.QUESTIONS, NoSuction.QUESTIONS, Weak.QUESTIONS)
        .flatMap(List::stream)
        .forEach(q -> require(all.put(q.code(), q) == null, q.code()));
    return all;
  }

  private static Map<String, Outcome> allOutcomes() {
    Map<String, Outcome> all = new LinkedHashMap<>();
    Stream.of(Begin.OUTCOMES, DoesNotStart.OUTCOMES, NoSuction.OUTCOMES, Weak.OUTCOMES)
        .flatMap(List::stream)
        .forEach(o -> require(all.put(o.code(), o) == null, o.code()));
    return all;
  }

  private static void require(boolean once, String code) {
    if (!once) {
      throw new IllegalStateException(code + " is there twice");
    }
  }

  /** All questions in the order of the table; the first is asked first. */
  public static List<Question> questions() {
    return List.copyOf(QUESTIONS.values());
  }

  /** All outcomes in the order of the table. */
  public static List<Outcome> outcomes() {
    return List.copyOf(OUTCOMES.values());
  }

  /** The question of a code; empty where the code is that of an outcome. */
  static Optional<Question> question(String code) {
    return Optional.ofNullable(QUESTIONS.get(code));
  }

  /** The outcome of a code; empty where the code is that of a question. */
  static Optional<Outcome> outcome(String code) {
    return Optional.ofNullable(OUTCOMES.get(code));
  }
}
