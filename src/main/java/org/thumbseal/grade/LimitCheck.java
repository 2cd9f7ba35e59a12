package org.thumbseal.grade;

import java.util.ArrayList;
import java.util.List;
import org.thumbseal.grade.Criteria.DecisionRule;
import org.thumbseal.measurement.Budgeted;
import org.thumbseal.measurement.Measurement;
import org.thumbseal.quantity.NormalDistribution;
import org.thumbseal.quantity.Quantity;

/**
 * A value at its limit: what the decision rule made of it, and how likely it conforms.
 *
 * @param measurement name of the quantity in result documents
 * @param side on which side of the limit the value has to be
 * @param limit as applied, in the unit of the value
 * @param value the measured value
 * @param rule by which it was decided
 */
public record LimitCheck(
    String measurement, Side side, double limit, Quantity value, DecisionRule rule) {
  /** On which side of a limit a value has to be. */
  public enum Side {
    /** At the limit or above it. */
    AT_LEAST,
    /** At the limit or below it. */
    AT_MOST
  }

  /** The checks that a grade was decided by, where the values are there. */
  public static List<LimitCheck> of(Measurement measurement, Grade grade) {
    Criteria criteria = grade.criteria();
    List<LimitCheck> checks = new ArrayList<>();
    measurement
        .riseTime()
        .map(Budgeted::quantity)
        .map(t -> at("riseTime", Side.AT_MOST, criteria.riseSeconds()).check(t, criteria))
        .ifPresent(checks::add);
    measurement
        .maximumVacuum()
        .map(Budgeted::quantity)
        .map(
            v ->
                at("maximumVacuum", Side.AT_LEAST, grade.limits().maximumKilopascals())
                    .check(v, criteria))
        .ifPresent(checks::add);
    return checks;
  }

  private record Limit(String measurement, Side side, double value) {
    LimitCheck check(Quantity measured, Criteria criteria) {
      return new LimitCheck(measurement, side, value, measured, criteria.decisionRule());
    }
  }

  private static Limit at(String measurement, Side side, double value) {
    return new Limit(measurement, side, value);
  }

  /** What the rule says of the value alone. */
  public Verdict outcome() {
    return side == Side.AT_LEAST
        ? Decision.atLeast(limit, value, rule)
        : Decision.atMost(limit, value, rule);
  }

  /** Half of the stretch around the limit in which nothing is decided, in the unit of the value. */
  public double guardBand() {
    return Decision.guardBand(value, rule);
  }

  /**
   * Probability that the true value keeps the limit, 0 to 1, for a normal distribution (JCGM
   * 106:2012 clause 7): Phi((y - T)/u) at a lower limit. It decides nothing.
   */
  public double conformance() {
    double inside = side == Side.AT_LEAST ? value.value() - limit : limit - value.value();
    if (value.standardUncertainty() == 0) {
      return inside >= 0 ? 1 : 0;
    }
    return NormalDistribution.cumulative(inside / value.standardUncertainty());
  }
}
