package org.thumbseal.link;

/** A native file that is not to be loaded; the message is a line for a person, with the cure. */
final class LibraryRefused extends Exception {
  private static final long serialVersionUID = 1L;

  LibraryRefused(String message) {
    super(message);
  }
}
