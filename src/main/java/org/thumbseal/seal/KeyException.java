package org.thumbseal.seal;

import org.thumbseal.json.Printable;

/** A key that cannot be used; the message is one line fit for a person and holds no secret. */
public final class KeyException extends Exception {
  private static final long serialVersionUID = 1L;

  /** Says in one line what is wrong and what to do. */
  public KeyException(String message) {
    super(Printable.line(message));
  }
}
