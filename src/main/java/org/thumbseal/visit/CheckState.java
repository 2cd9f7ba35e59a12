package org.thumbseal.visit;

import java.util.Locale;
import java.util.Optional;
import java.util.stream.Stream;

/** How an item was found. */
public enum CheckState {
  OK,
  NOT_OK,
  /** It was replaced, and is sound now. */
  REPLACED,
  NOT_CHECKED;

  /** The name in result documents and capture headers. */
  public String code() {
    return name().toLowerCase(Locale.ROOT).replace('_', '-');
  }

  /** The state of a code; empty where there is none. */
  public static Optional<CheckState> of(String code) {
    return Stream.of(values()).filter(state -> state.code().equals(code)).findFirst();
  }
}
