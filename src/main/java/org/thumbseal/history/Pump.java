package org.thumbseal.history;

import java.util.Optional;

/**
 * A pump as people know it.
 *
 * @param id asset id
 * @param description what it is, from the register
 * @param location where it is, from the register
 * @param care how it is kept
 */
public record Pump(String id, Optional<String> description, Optional<String> location, Care care) {
  /**
   * How it is kept.
   *
   * @param inUse whether it is to be tested at all
   * @param monthsBetween months from one test to the next
   */
  public record Care(boolean inUse, int monthsBetween) {
    /** Without a register: in use, monthly. */
    public static final Care USUAL = new Care(true, 1);
  }

  /** A pump of which only the id is known. */
  public static Pump unlisted(String id) {
    return new Pump(id, Optional.empty(), Optional.empty(), Care.USUAL);
  }
}
