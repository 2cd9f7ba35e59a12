package org.thumbseal.link;

/** An address that cannot be understood; the message is one line fit for a person. */
public final class LinkAddressException extends Exception {
  private static final long serialVersionUID = 1L;

  LinkAddressException(String message) {
    super(message);
  }
}
