package org.thumbseal.daemon;

/** Why nobody looks after a port any more. */
public enum PortOutcome {
  /** It is still looked after. */
  RUNNING,
  /** A finite input came to its end. */
  INPUT_ENDED,
  /** It was told to stop. */
  STOPPED,
  /** It could not be opened, and waiting would not help or was not wanted. */
  NOT_OPENED,
  /** This program has a fault; the log says more. */
  FAULT
}
