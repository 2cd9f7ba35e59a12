package org.thumbseal.history;

/** Why somebody should look at a pump, the most pressing first. */
public enum Concern {
  /** The last test failed. */
  FAILED,
  /** In use, and never judged by a test. */
  UNTESTED,
  /** The last test left it open. */
  UNDECIDED,
  /** The day for its next test is over. */
  OVERDUE,
  /** A trend leads to a limit. */
  HEADING,
  /** It got worse from one test to the next, and nothing was reported that explains it. */
  JUMPED,
  /** A trend leads to the bad side, and no limit within sight. */
  WORSENING,
  /** Its tests say nothing, but other work on it is overdue. */
  NEGLECTED,
  /** Nothing. */
  NONE,
  /** Not in use. */
  RESTING
}
