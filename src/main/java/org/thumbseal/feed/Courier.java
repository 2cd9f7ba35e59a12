package org.thumbseal.feed;

/** Brings documents to the other side, one at a time, and waits for its answer. */
interface Courier extends AutoCloseable {
  /** Sends one; waits no longer than its patience. */
  Answer deliver(Parcel parcel) throws InterruptedException;

  /** There is nothing to be sent for a while: lets go of the connection. */
  void rest();

  @Override
  default void close() {
    rest();
  }
}
