package org.thumbseal.capture;

/** A file that is not what it was taken for; the message is one line fit for a person. */
public final class CaptureFormatException extends Exception {
  private static final long serialVersionUID = 1L;

  /** Says in one line what is wrong and what to do. */
  public CaptureFormatException(String message) {
    super(message);
  }
}
