package org.thumbseal.guide;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * How far somebody has come through the guide. Never changes; each answer gives another one.
 *
 * @param answered question by question
 */
public record Walk(List<Answered> answered) {
  /**
   * One question with its answer.
   *
   * @param question that was asked
   * @param choice that was made
   */
  public record Answered(Question question, Choice choice) {}

  /** Keeps a copy. */
  public Walk {
    answered = List.copyOf(answered);
  }

  /** Nothing is answered yet. */
  public static Walk begun() {
    return new Walk(List.of());
  }

  private String now() {
    return answered.isEmpty()
        ? Guide.questions().get(0).code()
        : answered.get(answered.size() - 1).choice().next();
  }

  /** What is to be asked now; empty where the guide has come to its end. */
  public Optional<Question> question() {
    return Guide.question(now());
  }

  /** What the answers came to; empty where there is more to ask. */
  public Optional<Outcome> outcome() {
    return Guide.outcome(now());
  }

  /**
   * With the next answer.
   *
   * @throws IllegalArgumentException if this is no answer to the question that is asked now
   */
  public Walk with(Choice choice) {
    Question asked =
        question()
            .filter(q -> q.choices().contains(choice))
            .orElseThrow(
                () ->
                    new IllegalArgumentException(
                        choice.code() + " answers nothing that was asked"));
    List<Answered> more = new ArrayList<>(answered);
    more.add(new Answered(asked, choice));
    return new Walk(more);
  }

  /** Without the last answer; the same where there is none. */
  public Walk back() {
    return new Walk(answered.subList(0, Math.max(0, answered.size() - 1)));
  }
}
