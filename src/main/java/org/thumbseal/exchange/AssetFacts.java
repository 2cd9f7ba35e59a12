package org.thumbseal.exchange;

import java.util.Optional;

/**
 * What a register says of a pump.
 *
 * @param description what it is
 * @param location where it is
 * @param serial number of its maker
 */
public record AssetFacts(
    Optional<String> description, Optional<String> location, Optional<String> serial) {
  /** Of a pump that no register has. */
  public static final AssetFacts NONE =
      new AssetFacts(Optional.empty(), Optional.empty(), Optional.empty());
}
