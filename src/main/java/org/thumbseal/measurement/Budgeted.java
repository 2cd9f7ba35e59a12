package org.thumbseal.measurement;

import java.util.List;
import org.thumbseal.quantity.Quantity;

/**
 * A value with the budget of its uncertainty: independent contributions, added in squares.
 *
 * @param value best estimate, in {@code unit}
 * @param unit UCUM code
 * @param budget its contributions, in the same unit
 */
public record Budgeted(double value, String unit, List<Contribution> budget) {
  /** Keeps a copy of the budget. */
  public Budgeted {
    budget = List.copyOf(budget);
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
