package org.thumbseal.record;

import java.time.Instant;
import java.util.Optional;

/**
 * What was found wrong about a result after it was sealed. The result stays as it is; readers show
 * it as corrected.
 *
 * @param id the same for the same correction of the same result in the same standing
 * @param corrects the result
 * @param number counts the corrections of this result from 1, in the order in which they apply
 * @param was how the result stood before
 * @param said what was said
 */
public record Correction(String id, Subject corrects, long number, Standing was, Said said) {
  /** Name and version of the document's shape. */
  public static final String SCHEMA = "thumbseal-correction/1";

  /** What kind of document this is. */
  public static final String KIND = "correction";

  /** How the result stands with this correction, where it stood thus before. */
  public Standing appliedTo(Standing standing) {
    Change change = said.change();
    return new Standing(
        change.asset().or(standing::asset),
        change.note().or(standing::note),
        change
            .voided()
            .map(gone -> gone ? said.reason() : Optional.<String>empty())
            .orElse(standing.voided()));
  }

  /**
   * The result that is corrected.
   *
   * @param id of the result
   * @param digest SHA-256 of its canonical form with the signature, 64 hexadecimal digits
   * @param kid thumbprint of the key that sealed it
   * @param sequence its place in the ledger of that key
   * @param file name of its file without a folder
   */
  public record Subject(String id, String digest, String kid, long sequence, String file) {}

  /**
   * What a person said.
   *
   * @param change at least one
   * @param reason why; never absent where {@code change.voided} is there
   * @param by who, by a name of their own choice
   * @param at when, to the millisecond
   */
  public record Said(Change change, Optional<String> reason, Optional<String> by, Instant at) {}

  /**
   * What is to be different; what is absent stays.
   *
   * @param asset id of the pump that was tested
   * @param note a remark, in the place of an earlier one
   * @param voided true: the result does not count; false: it counts again
   */
  public record Change(Optional<String> asset, Optional<String> note, Optional<Boolean> voided) {}
}
