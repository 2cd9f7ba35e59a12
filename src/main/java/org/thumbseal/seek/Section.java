package org.thumbseal.seek;

/**
 * What lies between two neighbouring stations; behind the last one it is the pump itself.
 *
 * @param name for people
 * @param share how often it is this one, 1 to 100, against the shares of the others. It steers
 *     which station is tried next, never a conclusion
 */
public record Section(String name, int share) {
  private static final int MOST = 100;

  /** Refuses a share out of range, in words for a person. */
  public Section {
    if (share < 1 || share > MOST) {
      throw new IllegalArgumentException(
          "the share of '" + name + "' must be 1 to " + MOST + ", not " + share);
    }
  }
}
