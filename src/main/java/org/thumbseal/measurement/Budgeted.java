package org.thumbseal.measurement;

import java.util.List;
import java.util.Optional;
import org.thumbseal.quantity.Quantity;

/**
 * A value with the budget of its uncertainty: independent contributions, added in squares.
 *
 * @param value best estimate, in {@code unit}
 * @param unit UCUM code
 * @param budget its contributions
 * @param reached how the value was reached, in a sentence with numbers
 */
public record Budgeted(
    double value, String unit, List<Contribution> budget, Optional<String> reached) {
  /** Keeps a copy of the budget. */
  public Budgeted {
    budget = List.copyOf(budget);
  }

  /** A value of which there is no more to say than its budget. */
  public Budgeted(double value, String unit, List<Contribution> budget) {
    this(value, unit, budget, Optional.empty());
  }

  /** The same with a sentence that says how it was reached. */
  Budgeted reached(String sentence) {
    return new Budgeted(value, unit, budget, Optional.of(sentence));
  }

  /** Combined standard uncertainty, in {@code unit}. */
  public double standardUncertainty() {
    return Math.sqrt(
        budget.stream().mapToDouble(c -> c.standardUncertainty() * c.standardUncertainty()).sum());
  }

  /** The value with its combined uncertainty. */
  public Quantity quantity() {
    return new Quantity(value, unit, standardUncertainty());
  }
}
