package org.thumbseal.care;

import java.time.LocalDate;
import java.util.Optional;

/**
 * A pump that is looked after.
 *
 * @param id of the pump
 * @param description what it is; empty where nobody said
 * @param location where it stands; empty where nobody said
 * @param terms since when, and how often
 */
public record CaredFor(String id, String description, String location, Terms terms) {
  /** A pump of which nothing is known but its id. */
  public static CaredFor known(String id) {
    return new CaredFor(id, "", "", new Terms(Optional.empty(), Intervals.DEFAULT));
  }

  /**
   * Since when, and how often.
   *
   * @param inService first day of use, where it is known
   * @param intervals between one time and the next
   */
  public record Terms(Optional<LocalDate> inService, Intervals intervals) {}
}
