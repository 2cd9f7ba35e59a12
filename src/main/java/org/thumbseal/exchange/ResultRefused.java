package org.thumbseal.exchange;

/** A document that is not taken, with half a sentence that says why. */
public final class ResultRefused extends Exception {
  private static final long serialVersionUID = 1L;

  private final boolean readable;

  private ResultRefused(String message, boolean readable) {
    super(message);
    this.readable = readable;
  }

  /** It is a document, and not one to take. */
  static ResultRefused because(String message) {
    return new ResultRefused(message, true);
  }

  /** It is no document at all. */
  static ResultRefused unreadable(String message) {
    return new ResultRefused(message, false);
  }

  /** Whether it could be read. */
  public boolean isReadable() {
    return readable;
  }

  /** Why, in half a sentence. */
  public String why() {
    return String.valueOf(getMessage());
  }
}
