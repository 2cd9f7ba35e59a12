package org.thumbseal.grade;

import static org.thumbseal.grade.Judged.number;

import org.thumbseal.measurement.Budgeted;
import org.thumbseal.phase.Ending;
import org.thumbseal.quantity.Quantity;

/** The vacuum must climb far enough within the time. */
final class RiseCriterion {
  private final Judged test;

  private RiseCriterion(Judged test) {
    this.test = test;
  }

  static Judgement of(Judged test) {
    RiseCriterion criterion = new RiseCriterion(test);
    return test.measurement().riseTime().map(criterion::timed).orElseGet(criterion::notReached);
  }

  private Judgement timed(Budgeted measured) {
    Quantity time = measured.quantity();
    double limit = test.criteria().riseSeconds();
    String facts = number("The vacuum climbed by %.1f kPa in %s; ", rise(), Judged.text(time));
    return switch (Decision.atMost(limit, time, test.criteria().decisionRule())) {
      case PASS ->
          Judgement.of(
              Verdict.PASS, ReasonCode.RISE_IN_TIME, facts + number("the limit is %.1f s.", limit));
      case FAIL ->
          Judgement.of(
              Verdict.FAIL,
              ReasonCode.RISE_SLOW,
              facts + number("it has to be there within %.1f s.", limit));
      default ->
          Judgement.of(
              Verdict.INCONCLUSIVE,
              ReasonCode.NEAR_LIMIT,
              facts
                  + number("too near the limit of %.1f s to tell. ", limit)
                  + test.remedy(measured, limit).text());
    };
  }

  private Judgement notReached() {
    double missing = rise() - test.measurement().highestRise();
    double uncertainty = 2 * Shortfall.relativeUncertainty(test.measurement()) * rise();
    String facts =
        number(
            "The vacuum climbed by %.1f kPa; %.1f kPa are asked for within %.1f s. ",
            test.measurement().highestRise(), rise(), test.criteria().riseSeconds());
    if (!isDecided(uncertainty)) {
      return tooShort(facts);
    }
    return missing > uncertainty
        ? Judgement.of(Verdict.FAIL, ReasonCode.RISE_NOT_REACHED, facts.strip())
        : Judgement.of(
            Verdict.INCONCLUSIVE,
            ReasonCode.NEAR_LIMIT,
            facts + "That is within the uncertainty. " + remedy(missing));
  }

  /** The rise is known as well as the maximum that it is part of. */
  private String remedy(double missing) {
    return test.measurement()
        .maximumVacuum()
        .map(m -> new Remedy(m, Math.abs(missing), test.measurement().calibration()).text())
        .orElse("Repeat the test, with a longer hold.");
  }

  /** Either the time was up, or the vacuum stood still too low for more time to help. */
  private boolean isDecided(double uncertainty) {
    double open = test.measurement().openVacuum().value();
    return test.quality().blockedSeconds() > test.criteria().riseSeconds()
        || (test.isLongEnough() && test.quality().reachable() - open < rise() - uncertainty);
  }

  private Judgement tooShort(String facts) {
    double blocked = test.quality().blockedSeconds();
    if (test.quality().ending() == Ending.RELEASED || test.quality().ending() == Ending.DECAYED) {
      return Judgement.of(
          Verdict.INVALID,
          ReasonCode.RELEASED_EARLY,
          facts
              + number(
                  "The blocking ended after %.1f s, while it was still climbing. Repeat the test"
                      + " and hold until the vacuum stands still.",
                  blocked));
    }
    return Judgement.of(
        Verdict.INVALID,
        ReasonCode.GAP_IN_TEST,
        facts + number("The record ends after %.1f s of blocking. Repeat the test.", blocked));
  }

  private double rise() {
    return test.limits().riseKilopascals();
  }
}
