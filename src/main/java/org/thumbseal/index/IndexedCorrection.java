package org.thumbseal.index;

import java.time.Instant;
import java.util.Optional;

/**
 * Something that was said of a result after it was sealed, by a trusted key.
 *
 * @param result id of the result
 * @param at when it was said
 * @param by who said it
 * @param change what is different from then on
 * @param reason why
 */
public record IndexedCorrection(
    String result, Instant at, Optional<String> by, Change change, Optional<String> reason) {
  /**
   * What is different; what is absent stays.
   *
   * @param asset the pump
   * @param note a remark
   * @param voided true: it does not count; false: it counts again
   */
  public record Change(Optional<String> asset, Optional<String> note, Optional<Boolean> voided) {}
}
