package org.thumbseal.feed;

/** Where a feed begins. */
public enum FeedBegin {
  /** Where it left off. */
  GO_ON,
  /** With what was refused before, then where it left off. */
  REFUSED_AGAIN,
  /** With the first document, as if nothing had been sent yet. */
  ALL_AGAIN
}
