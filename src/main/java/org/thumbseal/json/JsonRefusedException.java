package org.thumbseal.json;

/** Input that is not taken for a document; the message is one line fit for a person. */
public final class JsonRefusedException extends Exception {
  private static final long serialVersionUID = 1L;

  /** Says in one line what is wrong; control characters in it are neutralised. */
  public JsonRefusedException(String message) {
    super(Printable.line(message));
  }
}
