package org.thumbseal.record;

import java.util.Optional;

/**
 * What holds of a result, all its corrections considered.
 *
 * @param asset id of the pump; absent where the test is not assigned
 * @param note a remark added later
 * @param voided why the result does not count; absent where it does
 */
public record Standing(Optional<String> asset, Optional<String> note, Optional<String> voided) {
  /** Of a result as it was sealed. */
  public static Standing sealed(Optional<String> asset) {
    return new Standing(asset, Optional.empty(), Optional.empty());
  }
}
