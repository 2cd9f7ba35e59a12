package org.thumbseal.index;

import java.time.Instant;
import java.time.LocalDate;
import java.util.Optional;

/**
 * What a person says was done to a pump.
 *
 * @param asset the pump
 * @param work code of the work
 * @param on the day it was done, by the person's calendar; else the day it was recorded, UTC
 * @param recordedAt when it was said
 * @param said what else was said
 */
public record IndexedWork(
    String asset, String work, LocalDate on, Optional<Instant> recordedAt, Said said) {
  /**
   * What was said.
   *
   * @param by who did it
   * @param inOrder whether the pump was found fit for use; absent where that was not said
   * @param id of the document
   */
  public record Said(Optional<String> by, Optional<Boolean> inOrder, String id) {}
}
