package org.thumbseal.feed;

import org.thumbseal.json.Printable;

/** Documents cannot be sent like that; the message is one line fit for a person. */
public final class FeedException extends Exception {
  private static final long serialVersionUID = 1L;

  private final boolean mistake;

  private FeedException(String message, boolean mistake) {
    super(Printable.line(message));
    this.mistake = mistake;
  }

  static FeedException mistake(String message) {
    return new FeedException(message, true);
  }

  static FeedException machine(String message) {
    return new FeedException(message, false);
  }

  /** Whether it is for the user to write something else; otherwise the machine failed. */
  public boolean isMistake() {
    return mistake;
  }
}
