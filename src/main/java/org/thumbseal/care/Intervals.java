package org.thumbseal.care;

/**
 * How often a pump is to be seen to, in whole months. The defaults are common practice, no
 * published source; a local rule decides.
 *
 * @param test between occlusion tests, 1 to 120
 * @param inspection between inspections by a qualified technician, 1 to 120
 * @param sterilisation between sterilisations of jar and tubing, 1 to 120; 0: only after an
 *     infectious case, as where jars are used once
 */
public record Intervals(int test, int inspection, int sterilisation) {
  /** Once a month, once a year, once a month. */
  public static final Intervals DEFAULT = new Intervals(1, 12, 1);
}
