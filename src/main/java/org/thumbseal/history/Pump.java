package org.thumbseal.history;

import java.util.Optional;

/**
 * A pump as people know it.
 *
 * @param id asset id
 * @param description what it is, from the register
 * @param location where it is, from the register
 * @param inUse whether it is to be tested at all
 */
public record Pump(
    String id, Optional<String> description, Optional<String> location, boolean inUse) {
  /** A pump of which only the id is known; it is taken to be in use. */
  public static Pump unlisted(String id) {
    return new Pump(id, Optional.empty(), Optional.empty(), true);
  }
}
