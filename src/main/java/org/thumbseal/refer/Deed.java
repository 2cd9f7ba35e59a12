package org.thumbseal.refer;

import java.time.LocalDate;
import java.util.List;
import java.util.Optional;

/**
 * Something that people did to the pump.
 *
 * @param work its code, such as {@code repair}
 * @param on the day
 * @param by who did it
 * @param told what came of it
 * @param source document
 */
public record Deed(String work, LocalDate on, Optional<String> by, Told told, Source source) {
  /** Code of a walk through the trouble guide. */
  public static final String TROUBLE = "trouble-guide";

  /** Code of a search for a leak. */
  public static final String LEAK_SEARCH = "leak-search";

  /** Codes of what makes a pump infectious, and of what ends that. */
  static final String INFECTIOUS = "infectious-case";

  /** Likewise. */
  static final String STERILISED = "sterilisation";

  /**
   * What came of it; what the record does not say is absent.
   *
   * @param inOrder whether the pump was found fit for use
   * @param lines what was found, and the remark
   * @param answers question by question, cautions left out
   */
  public record Told(Optional<Boolean> inOrder, List<String> lines, List<Answer> answers) {
    /** Keeps copies. */
    public Told {
      lines = List.copyOf(lines);
      answers = List.copyOf(answers);
    }
  }

  /**
   * A question in the words in which it was asked.
   *
   * @param question one line
   * @param answer one line
   */
  public record Answer(String question, String answer) {}
}
