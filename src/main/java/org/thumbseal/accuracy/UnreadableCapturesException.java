package org.thumbseal.accuracy;

/** Captures with their truth cannot be read; the message names the file and says why. */
public final class UnreadableCapturesException extends Exception {
  private static final long serialVersionUID = 1L;

  UnreadableCapturesException(String message, Throwable cause) {
    super(message, cause);
  }
}
