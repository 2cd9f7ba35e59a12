package org.thumbseal.spares;

import java.util.List;

/** A stock file with mistakes; nothing of it is used. */
public final class StockRefused extends Exception {
  private static final long serialVersionUID = 1L;

  private final transient List<StockMistake> mistakes;

  StockRefused(List<StockMistake> mistakes) {
    super(mistakes.stream().map(StockMistake::line).findFirst().orElse(""));
    this.mistakes = mistakes.stream().sorted().toList();
  }

  /** All of them in the order of rows; at least one. */
  public List<StockMistake> mistakes() {
    return mistakes;
  }
}
