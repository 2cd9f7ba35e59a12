package org.thumbseal.seal;

/** A seal that does not hold; the message says why in half a sentence. */
final class BrokenSealException extends Exception {
  private static final long serialVersionUID = 1L;

  BrokenSealException(String message) {
    super(message);
  }
}
