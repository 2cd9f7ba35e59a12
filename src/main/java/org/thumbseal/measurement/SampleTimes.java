package org.thumbseal.measurement;

/** Whose clock the times of the samples are from. */
public enum SampleTimes {
  /** The sensor's own. */
  SENSOR,
  /** That of the computer when a reading arrived, which may be a batch of USB later. */
  ARRIVAL
}
