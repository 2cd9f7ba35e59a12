package org.thumbseal.wire;

/** What the decoder made of one line. */
public sealed interface Decoded {
  /** A record whose checksum and fields are good. */
  record Good(WireRecord content) implements Decoded {}

  /** A line that never becomes a sample. */
  record Rejected(RejectCause cause) implements Decoded {}
}
