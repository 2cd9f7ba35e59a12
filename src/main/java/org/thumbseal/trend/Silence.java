package org.thumbseal.trend;

/** Why no trend is stated. */
public enum Silence {
  /** Too few visits since the beginning or since the last step. */
  TOO_FEW,
  /** Visits enough, but within too short a time. */
  TOO_SHORT,
  /** What is there may be chance. */
  NOT_SIGNIFICANT
}
