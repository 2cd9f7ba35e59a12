package org.thumbseal.index;

import org.thumbseal.json.Printable;

/**
 * A records base that cannot be used; the message is one line fit for a person, without secrets.
 */
public final class RecordsException extends Exception {
  private static final long serialVersionUID = 1L;

  private final boolean mistake;

  private RecordsException(String message, boolean mistake) {
    super(Printable.line(message));
    this.mistake = mistake;
  }

  /** The user asked for something that cannot be: exit code 2. */
  static RecordsException mistake(String message) {
    return new RecordsException(message, true);
  }

  /** Machine, network or disk failed: exit code 3. */
  static RecordsException machine(String message) {
    return new RecordsException(message, false);
  }

  /** Whether the user has to say something else, rather than the machine to be mended. */
  public boolean isMistake() {
    return mistake;
  }
}
