package org.thumbseal.json;

import org.thumbseal.measurement.Budgeted;
import org.thumbseal.measurement.Decay;
import org.thumbseal.measurement.Decay.Fitted;
import tools.jackson.databind.node.ObjectNode;

/** The members of a document that come from a decay. */
final class DecayTree {
  private DecayTree() {}

  static void measurements(Decay decay, ObjectNode node) {
    decay.decayRate().ifPresent(q -> node.set("decayRate", rate(q, decay)));
    decay.leakRate().ifPresent(q -> node.set("leakRate", rate(q, decay)));
  }

  /** Where the pump may leak back, the jar leaks this much at most. */
  private static ObjectNode rate(Budgeted rate, Decay decay) {
    ObjectNode node = ResultTree.quantity(rate.quantity());
    return decay.circumstances().pinched() ? node : node.put("bound", "upper");
  }

  static ObjectNode diagnostics(Decay decay) {
    ObjectNode node = Json.object();
    ResultTree.number(node, "start", decay.start());
    ResultTree.number(node, "end", decay.end());
    node.put("pinched", decay.circumstances().pinched());
    node.put("startFrom", decay.circumstances().startSaid() ? "assumed" : "curve");
    ResultTree.limit(node, "airAt", decay.reference().kilopascals(), "kPa");
    node.put("airFrom", decay.reference().isAmbient() ? "ambient" : "standard-assumed");
    decay.fitted().ifPresent(fitted -> fitted(node.putObject("fit"), fitted));
    decay.refusal().ifPresent(why -> node.put("why", why));
    return node;
  }

  private static void fitted(ObjectNode node, Fitted fitted) {
    ResultTree.number(node, "from", fitted.from());
    ResultTree.number(node, "to", fitted.to());
    ResultTree.limit(node, "chokedAbove", fitted.chokedAbove(), "kPa");
    ResultTree.limit(node, "rmsMisfit", fitted.rms(), "kPa");
    ResultTree.number(node, "lag1Autocorrelation", fitted.lag1());
  }
}
