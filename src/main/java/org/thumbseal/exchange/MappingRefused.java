package org.thumbseal.exchange;

import java.util.List;

/** A mapping file that is not followed, with all that is wrong in it. */
public final class MappingRefused extends Exception {
  private static final long serialVersionUID = 1L;

  private final transient List<MappingMistake> mistakes;

  MappingRefused(List<MappingMistake> mistakes) {
    super(mistakes.size() + " mistakes");
    this.mistakes = List.copyOf(mistakes);
  }

  /** All mistakes, by line; at least one. */
  public List<MappingMistake> mistakes() {
    return mistakes;
  }
}
