package org.thumbseal.json;

import org.thumbseal.measurement.Budgeted;
import org.thumbseal.measurement.Contribution;
import org.thumbseal.measurement.Contribution.Distribution;
import org.thumbseal.measurement.Observed;
import tools.jackson.databind.node.ObjectNode;

/**
 * The uncertainty budgets of a result, by the names of the measurements. They stand beside the
 * measurements, not in them: a quantity keeps its four members, on which importers rely.
 */
final class BudgetTree {
  /** More than the results have, so that they can be recomputed to their last digit. */
  private static final int DIGITS = 7;

  private BudgetTree() {}

  static ObjectNode of(Observed observed) {
    ObjectNode node = Json.object();
    observed.budgeted().forEach((name, quantity) -> node.set(name, budget(quantity)));
    return node;
  }

  private static ObjectNode budget(Budgeted quantity) {
    ObjectNode node = Json.object();
    quantity.reached().ifPresent(sentence -> node.put("reached", sentence));
    var lines = node.putArray("contributions");
    quantity.budget().forEach(line -> lines.add(line(line, quantity.unit())));
    return node;
  }

  private static ObjectNode line(Contribution line, String unit) {
    ObjectNode node = Json.object();
    Contribution.Input input = line.input();
    node.put("name", line.name());
    number(node, "estimate", input.estimate());
    node.put("unit", line.inputUnit(unit));
    node.put("distribution", input.distribution().code());
    if (input.distribution() != Distribution.NORMAL) {
      number(node, "halfWidth", input.spread());
    }
    number(node, "standardUncertainty", input.standardUncertainty());
    number(node, "sensitivity", line.sensitivity());
    node.put("sensitivityUnit", line.sensitivityUnit(unit));
    number(node, "contribution", line.standardUncertainty());
    node.put("source", line.source());
    return node;
  }

  private static void number(ObjectNode node, String name, double value) {
    node.put(name, Decimals.significant(value, DIGITS));
  }
}
