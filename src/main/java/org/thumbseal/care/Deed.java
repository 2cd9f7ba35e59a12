package org.thumbseal.care;

import java.time.LocalDate;

/**
 * Something that was done to a pump, by the record.
 *
 * @param asset id of the pump
 * @param work what
 * @param on the day
 * @param outcome what came of it
 */
public record Deed(String asset, Work work, LocalDate on, Outcome outcome) {
  /** What came of it. */
  public enum Outcome {
    /** Good. */
    IN_ORDER,
    /** The pump must not be used as it is. */
    NOT_IN_ORDER,
    /** It showed nothing: a test that is invalid, or too near a limit to tell. */
    UNDECIDED
  }
}
