package org.thumbseal.grade;

import static org.thumbseal.grade.Judged.number;

import org.thumbseal.measurement.Budgeted;
import org.thumbseal.phase.Ending;
import org.thumbseal.quantity.Quantity;

/** The vacuum must go on to at least the maximum that is asked for. */
final class MaximumCriterion {
  /**
   * A vacuum that grows more slowly counts as steady, kPa/s (common practice: the needle rests).
   */
  private static final double STEADY = 0.15;

  private final Judged test;
  private final Verdict rise;

  private MaximumCriterion(Judged test, Verdict rise) {
    this.test = test;
    this.rise = rise;
  }

  /** Judges the maximum, knowing what became of the rise. */
  static Judgement of(Judged test, Verdict rise) {
    MaximumCriterion criterion = new MaximumCriterion(test, rise);
    return test.measurement()
        .maximumVacuum()
        .map(criterion::judge)
        .orElseGet(() -> criterion.tooShort("The inlet was blocked for less than a second. "));
  }

  private Judgement judge(Budgeted measured) {
    Quantity maximum = measured.quantity();
    String facts = number("The vacuum reached %s; ", Judged.text(maximum));
    return switch (Decision.atLeast(limit(), maximum, test.criteria().decisionRule())) {
      case PASS ->
          Judgement.of(
              Verdict.PASS,
              ReasonCode.MAXIMUM_REACHED,
              facts + number("at least %.1f kPa are asked for.", limit()));
      case FAIL -> low(maximum, facts + number("at least %.1f kPa are asked for. ", limit()));
      default ->
          Judgement.of(
              Verdict.INCONCLUSIVE,
              ReasonCode.NEAR_LIMIT,
              facts
                  + number("too near the limit of %.1f kPa to tell. ", limit())
                  + remedy(measured));
    };
  }

  /** A longer hold comes before a better sensor: then the maximum itself is another one. */
  private String remedy(Budgeted measured) {
    double slope = test.quality().finalSlope();
    return slope < STEADY
        ? test.remedy(measured, limit()).text()
        : number(
            "It was still climbing by %.2f kPa/s after %.1f s: repeat the test and hold until the"
                + " vacuum stands still.",
            slope, test.quality().blockedSeconds());
  }

  /**
   * A vacuum that stood still too low has failed. One that was still climbing might have got there:
   * then the test decides nothing, unless the rise has failed already.
   */
  private Judgement low(Quantity maximum, String facts) {
    boolean stoodStill =
        test.isLongEnough()
            && (test.quality().finalSlope() < STEADY
                || test.quality().reachable() < limit() - maximum.expandedUncertainty());
    if (stoodStill) {
      return Judgement.of(Verdict.FAIL, ReasonCode.MAXIMUM_LOW, facts.strip());
    }
    return rise == Verdict.FAIL
        ? Judgement.of(
            Verdict.FAIL,
            ReasonCode.MAXIMUM_LOW,
            facts
                + number(
                    "It was still climbing by %.2f kPa/s when the blocking ended.",
                    test.quality().finalSlope()))
        : tooShort(facts);
  }

  private Judgement tooShort(String facts) {
    boolean released =
        test.quality().ending() == Ending.RELEASED || test.quality().ending() == Ending.DECAYED;
    return Judgement.of(
        Verdict.INVALID,
        released ? ReasonCode.RELEASED_EARLY : ReasonCode.GAP_IN_TEST,
        facts
            + number(
                "It was still climbing by %.2f kPa/s after %.1f s. Repeat the test and hold until"
                    + " the vacuum stands still.",
                test.quality().finalSlope(), test.quality().blockedSeconds()));
  }

  private double limit() {
    return test.limits().maximumKilopascals();
  }
}
