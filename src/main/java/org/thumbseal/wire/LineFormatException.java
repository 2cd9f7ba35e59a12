package org.thumbseal.wire;

/** A written form of lines that cannot be used; the message is one line fit for a person. */
public final class LineFormatException extends Exception {
  private static final long serialVersionUID = 1L;

  LineFormatException(String message) {
    super("format: " + message);
  }
}
