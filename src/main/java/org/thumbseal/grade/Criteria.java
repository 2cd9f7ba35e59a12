package org.thumbseal.grade;

import java.util.Optional;

/**
 * The limits of a test, as the site has set them, and what is tested; the defaults are common
 * practice without a published source.
 *
 * @param name what the site calls them
 * @param riseKilopascals how far the vacuum has to climb above the open vacuum, kPa, 1 to 100
 * @param riseSeconds within this time, s, 0.1 to 300
 * @param usualRiseFrom a faster rise is worth a word, s
 * @param maximumKilopascals least maximum vacuum, kPa, 1 to 100
 * @param openKilopascals a higher open vacuum is worth a word, kPa
 * @param altitudeRule what becomes of the limits where the ambient pressure is low
 * @param decisionRule how the uncertainty counts
 * @param equipment jar and pump that the limits were written for
 */
public record Criteria(
    String name,
    double riseKilopascals,
    double riseSeconds,
    double usualRiseFrom,
    double maximumKilopascals,
    double openKilopascals,
    AltitudeRule altitudeRule,
    DecisionRule decisionRule,
    Equipment equipment) {

  /** What becomes of the limits where the ambient pressure is below {@value Limits#LOW_AMBIENT}. */
  public enum AltitudeRule {
    /** Limits of vacuum are multiplied by ambient over 101.325 kPa. */
    SCALE,
    /** Limits stay; one that cannot be reached at all makes the test invalid. */
    STRICT
  }

  /** How the uncertainty of a value counts at a limit (ILAC-G8:09/2019, JCGM 106:2012). */
  public enum DecisionRule {
    /** Guard band of one expanded uncertainty: between pass and fail lies inconclusive. */
    GUARDED,
    /** Simple acceptance: the value alone decides. */
    SIMPLE
  }

  /**
   * Jar and pump that the limits were written for. No verdict depends on them.
   *
   * @param jarLitres volume of the jar, L, 0.05 to 50; absent where the site has not one kind
   * @param ratedLitresPerMinute pumping speed that the pump's papers promise, L/min, 0.1 to 1000
   */
  public record Equipment(Optional<Double> jarLitres, Optional<Double> ratedLitresPerMinute) {
    /** Nothing said of it. */
    public static final Equipment UNKNOWN = new Equipment(Optional.empty(), Optional.empty());

    /** Refuses what is out of range. */
    public Equipment {
      jarLitres.ifPresent(v -> check("jar in L", v, 0.05, 50));
      ratedLitresPerMinute.ifPresent(v -> check("ratedSpeed in L/min", v, 0.1, 1000));
    }
  }

  /** Common practice, no published source: +65 kPa within 10 s (6 to 10 is usual), 80 kPa. */
  public static final Criteria DEFAULT =
      new Criteria(
          "default", 65, 10, 6, 80, 5, AltitudeRule.SCALE, DecisionRule.GUARDED, Equipment.UNKNOWN);

  /** Refuses limits out of range. */
  public Criteria {
    check("rise in kPa", riseKilopascals, 1, 100);
    check("riseTimeLimit in s", riseSeconds, 0.1, 300);
    check("usualRiseTimeFrom in s", usualRiseFrom, 0, riseSeconds);
    check("maximumVacuumLimit in kPa", maximumKilopascals, 1, 100);
    check("openVacuumLimit in kPa", openKilopascals, 0.1, 100);
  }

  /** The same limits for a pump of another rated speed, L/min. */
  public Criteria withRatedSpeed(Optional<Double> litresPerMinute) {
    return new Criteria(
        name,
        riseKilopascals,
        riseSeconds,
        usualRiseFrom,
        maximumKilopascals,
        openKilopascals,
        altitudeRule,
        decisionRule,
        new Equipment(equipment.jarLitres(), litresPerMinute));
  }

  private static void check(String name, double value, double low, double high) {
    if (!(value >= low && value <= high)) {
      throw new IllegalArgumentException(
          name + " must be between " + low + " and " + high + ", not " + value);
    }
  }
}
