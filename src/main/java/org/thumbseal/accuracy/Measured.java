package org.thumbseal.accuracy;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import org.thumbseal.grade.Verdict;
import org.thumbseal.json.ResultTree;
import org.thumbseal.quantity.Quantity;
import org.thumbseal.record.ResultDocument;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.node.ObjectNode;

/**
 * What the result document says, as its reader takes it: rounded numbers, absent what is absent.
 *
 * @param quantities by name, in s, kPa and L/min
 * @param verdict of the test
 * @param findings surest first
 */
record Measured(Map<String, Quantity> quantities, Verdict verdict, List<Finding> findings) {

  /**
   * What the document suggests is wrong.
   *
   * @param code such as {@code leak}
   * @param confidence 0 to 1
   */
  record Finding(String code, double confidence) {}

  Measured {
    quantities = Map.copyOf(quantities);
    findings = List.copyOf(findings);
  }

  static Measured of(ResultDocument document) {
    ObjectNode tree = ResultTree.of(document);
    Map<String, Quantity> quantities = new TreeMap<>();
    tree.at("/measurements")
        .propertyStream()
        .filter(e -> e.getValue().has("expandedUncertainty"))
        .forEach(e -> quantities.put(e.getKey(), quantity(e.getValue())));
    document.measurement().ifPresent(m -> quantities.put(Truth.ONSET, m.occludedAt().quantity()));
    return new Measured(quantities, document.grade().verdict(), findings(tree));
  }

  private static List<Finding> findings(ObjectNode tree) {
    return tree.at("/findings")
        .valueStream()
        .map(n -> new Finding(n.path("code").asString(), n.path("confidence").doubleValue()))
        .sorted(java.util.Comparator.comparingDouble(Finding::confidence).reversed())
        .toList();
  }

  private static Quantity quantity(JsonNode node) {
    String unit = node.path("unit").asString();
    double scale = unit.equals("mL/min") ? 1e-3 : 1;
    return new Quantity(
        scale * node.path("value").doubleValue(),
        scale == 1 ? unit : "L/min",
        scale
            * node.path("expandedUncertainty").doubleValue()
            / node.path("coverageFactor").doubleValue());
  }

  Optional<Quantity> quantity(String name) {
    return Optional.ofNullable(quantities.get(name));
  }

  /** Expanded uncertainty; not a number where the quantity was not measured. */
  double expanded(String name) {
    return quantity(name).map(Quantity::expandedUncertainty).orElse(Double.NaN);
  }
}
