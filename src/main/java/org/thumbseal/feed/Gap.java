package org.thumbseal.feed;

/**
 * Documents in a row that were passed over.
 *
 * @param kid key of their chain
 * @param from number of the first
 * @param to number of the last
 * @param why the other side refused it, in half a sentence; empty where the documents were not
 *     there
 */
record Gap(String kid, long from, long to, String why) {
  /** Whether they were not to be found, and are to be sent when they are. */
  boolean isMissing() {
    return why.isEmpty();
  }

  boolean holds(String key, long sequence) {
    return kid.equals(key) && from <= sequence && sequence <= to;
  }

  long documents() {
    return to - from + 1;
  }
}
