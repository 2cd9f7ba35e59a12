package org.thumbseal.json;

import org.thumbseal.measurement.PumpEstimate;
import org.thumbseal.quantity.Quantity;
import tools.jackson.databind.node.ObjectNode;

/** What the rise says about the pump, in a result. */
final class PumpTree {
  private static final int PLACES = 6;

  private PumpTree() {}

  /** What cannot be relied on is no measurement: it stands in the diagnostics alone. */
  static void measurements(ObjectNode node, PumpEstimate pump) {
    pump.budgeted().forEach((name, q) -> node.set(name, ResultTree.quantity(q.quantity())));
  }

  /** How the model was laid through the rise, and what came of it. */
  static void diagnostics(ObjectNode node, PumpEstimate pump) {
    node.put("trusted", pump.trusted());
    pump.distrust().ifPresent(why -> node.put("why", why.text()));
    parameter(node, "speedOverVolume", pump.rate().quantity());
    parameter(node, "ultimatePressure", pump.ultimate().quantity());
    parameter(node, "heatExchangeTime", pump.exchange());
    pump.leak().ifPresent(q -> parameter(node, "leakOverVolume", q.quantity()));
    pump.resistance().ifPresent(q -> parameter(node, "restriction", q));
    pump.ceiling().ifPresent(v -> ResultTree.limit(node, "heldAt", v, "kPa"));
    ResultTree.limit(node, "rmsMisfit", pump.misfit().rms(), "kPa");
    ResultTree.limit(node, "noise", pump.misfit().noise(), "kPa");
    node.put("lag1Autocorrelation", Decimals.round(pump.misfit().lag1(), PLACES));
  }

  private static void parameter(ObjectNode node, String name, Quantity quantity) {
    ObjectNode child = node.putObject(name);
    child.put("value", Decimals.round(quantity.value(), PLACES));
    child.put("unit", quantity.unit());
    child.put("expandedUncertainty", Decimals.round(quantity.expandedUncertainty(), PLACES));
    child.put("coverageFactor", Quantity.COVERAGE_FACTOR);
  }
}
