package org.thumbseal.visit;

import java.util.Locale;

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
}
