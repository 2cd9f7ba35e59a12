package org.thumbseal.trend;

/** What becomes of a pump of the study, in months of its life since it was last made good. */
enum Wear {
  /** Nothing but scatter and season. */
  NONE,
  /** The same, of a pump that never had much to spare: 0.2 to 1 s from the limit. */
  NEAR_LIMIT,
  /** A third of the way to the limit in a year. */
  SLOW,
  /** To the limit in about a year. */
  FAST,
  /** A leak that begins at some month and grows. */
  GROWING_LEAK,
  /** A leak that is there from one month to the next. */
  SUDDEN_LEAK,
  /** A filter that clogs and is replaced every nine months, before it fails. */
  CLOGGING,
  /** Another jar from some month on, which nobody wrote down. */
  OTHER_JAR
}
