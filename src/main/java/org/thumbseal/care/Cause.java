package org.thumbseal.care;

/** Why something is due. */
public enum Cause {
  /** It was done, and its term runs. */
  TERM,
  /** No record tells of it. */
  NEVER_DONE,
  /** The last one found the pump unfit, and nothing since says otherwise. */
  NOT_IN_ORDER,
  /** The last test decided nothing. */
  UNDECIDED,
  /** The pump was repaired and not tested since. */
  AFTER_REPAIR,
  /** Jar and tubing were used on an infectious patient and not sterilised since. */
  AFTER_INFECTIOUS_CASE
}
