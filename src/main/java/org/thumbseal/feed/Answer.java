package org.thumbseal.feed;

/** What became of a document that was sent. */
sealed interface Answer {
  /** The other side has it. */
  record Accepted() implements Answer {}

  /**
   * The other side will never take this one as it is.
   *
   * @param why in half a sentence
   */
  record Refused(String why) implements Answer {}

  /**
   * It is not known to have arrived, through no fault of its own: it is to be sent again.
   *
   * @param why in half a sentence, with what to do
   */
  record Trouble(String why) implements Answer {}
}
