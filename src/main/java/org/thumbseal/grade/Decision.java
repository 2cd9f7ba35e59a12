package org.thumbseal.grade;

import org.thumbseal.grade.Criteria.DecisionRule;
import org.thumbseal.quantity.Quantity;

/** The decision rule at a limit (ILAC-G8:09/2019 4.2.1 and 4.2.3; JCGM 106:2012 clause 8). */
final class Decision {
  private Decision() {}

  /** Pass at least U above a lower limit, fail at least U below it, else inconclusive. */
  static Verdict atLeast(double limit, Quantity value, DecisionRule rule) {
    double guard = guardBand(value, rule);
    if (value.value() >= limit + guard) {
      return Verdict.PASS;
    }
    boolean below = rule == DecisionRule.SIMPLE || value.value() <= limit - guard;
    return below ? Verdict.FAIL : Verdict.INCONCLUSIVE;
  }

  /** w, in the unit of the value: U, or nothing for simple acceptance. */
  static double guardBand(Quantity value, DecisionRule rule) {
    return rule == DecisionRule.SIMPLE ? 0 : value.expandedUncertainty();
  }

  /** The same at an upper limit. */
  static Verdict atMost(double limit, Quantity value, DecisionRule rule) {
    return atLeast(
        -limit, new Quantity(-value.value(), value.unit(), value.standardUncertainty()), rule);
  }
}
