package org.thumbseal.care;

import java.time.Instant;
import java.time.LocalDate;
import java.util.List;
import java.util.Optional;

/**
 * What a person says was done to a pump.
 *
 * @param id the same for the same words, so that saying it twice is harmless
 * @param said what was said
 * @param recordedAt when it was said, to the millisecond
 */
public record Inspection(String id, Said said, Instant recordedAt) {
  /** Name and version of the document's shape. */
  public static final String SCHEMA = "thumbseal-inspection/1";

  /** What kind of document this is. */
  public static final String KIND = "inspection";

  /**
   * The words.
   *
   * @param asset id of the pump, 1 to 100 plain characters
   * @param done what was done, and when
   * @param by who did it, by a name of their own choice
   * @param more what else there is to say
   */
  public record Said(String asset, Done done, String by, More more) {}

  /**
   * What was done.
   *
   * @param work what
   * @param on the day, at the place where it was done
   * @param inOrder whether the pump was found fit for use
   */
  public record Done(Work work, LocalDate on, boolean inOrder) {}

  /**
   * What may be missing.
   *
   * @param note a remark, one line
   * @param answers question by question, where there were some
   * @param outcome what the answers came to
   */
  public record More(Optional<String> note, List<Answer> answers, Optional<Outcome> outcome) {
    /** Nothing. */
    public static final More NONE = new More(Optional.empty(), List.of());

    /** Keeps a copy of the answers. */
    public More {
      answers = List.copyOf(answers);
    }

    /** Answers that came to nothing in particular. */
    public More(Optional<String> note, List<Answer> answers) {
      this(note, answers, Optional.empty());
    }
  }

  /**
   * One question as it was asked.
   *
   * @param question its code
   * @param answer code of what was answered
   * @param words both in the words that the person saw, for whoever reads this without the program
   */
  public record Answer(String question, String answer, Optional<Asked> words) {
    /** Codes alone. */
    public Answer(String question, String answer) {
      this(question, answer, Optional.empty());
    }
  }

  /**
   * Words of a question.
   *
   * @param question as it was asked, one line
   * @param answer that was chosen
   */
  public record Asked(String question, String answer) {}

  /**
   * What the answers came to.
   *
   * @param code its name
   * @param cause the likely one, in words
   * @param next what to do
   * @param who may do it
   */
  public record Outcome(String code, String cause, String next, String who) {}
}
