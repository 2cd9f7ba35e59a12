package org.thumbseal.visit;

import java.util.Locale;
import java.util.Optional;
import java.util.stream.Stream;

/** Who said that a test begins. */
public enum StartedBy {
  /** The key on the sensor. */
  KEY,
  /** The button on the page. */
  PAGE,
  /** The command {@code start}. */
  COMMAND;

  /** The name in result documents and capture headers. */
  public String code() {
    return name().toLowerCase(Locale.ROOT);
  }

  /** Who has a code; empty where there is none. */
  public static Optional<StartedBy> of(String code) {
    return Stream.of(values()).filter(by -> by.code().equals(code)).findFirst();
  }
}
