package org.thumbseal.register;

import java.util.List;

/** A register with mistakes; nothing of it is used. */
public final class RegisterRefused extends Exception {
  private static final long serialVersionUID = 1L;

  private final transient List<RegisterMistake> mistakes;

  RegisterRefused(List<RegisterMistake> mistakes) {
    super(mistakes.stream().map(RegisterMistake::line).findFirst().orElse(""));
    this.mistakes = mistakes.stream().sorted().toList();
  }

  /** All of them in the order of rows and columns; at least one. */
  public List<RegisterMistake> mistakes() {
    return mistakes;
  }
}
