package org.thumbseal.phase;

/** How a test came to its end. */
public enum Ending {
  /** The inlet was opened. */
  RELEASED,
  /**
   * The pump was switched off with the inlet blocked, and the vacuum was still there at the end.
   */
  DECAYED,
  /** The record ends with the inlet blocked. */
  CUT_OFF,
  /** The sensor restarted, or nothing came from it for too long. */
  INTERRUPTED,
  /** The inlet stayed blocked longer than any test takes. */
  OVERLONG
}
