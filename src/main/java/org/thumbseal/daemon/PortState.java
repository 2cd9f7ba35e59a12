package org.thumbseal.daemon;

/** Where a port stands. */
public enum PortState {
  /** It could not be opened and is waited for. */
  ABSENT,
  /** It is being opened. */
  OPENING,
  /** It is open; nothing that a sensor says has come yet. */
  SETTLING,
  /** A sensor speaks. */
  STREAMING,
  /** It was unplugged or fell silent, and will be opened again. */
  LOST,
  /** Nobody looks after it any more. */
  ENDED
}
