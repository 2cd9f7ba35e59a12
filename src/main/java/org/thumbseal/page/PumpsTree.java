package org.thumbseal.page;

import org.thumbseal.json.Json;
import org.thumbseal.pipeline.KnownPump;
import org.thumbseal.pipeline.KnownPumps;
import tools.jackson.databind.node.ArrayNode;
import tools.jackson.databind.node.ObjectNode;

/** The pumps that the page offers, by what people know them by. */
final class PumpsTree {
  private PumpsTree() {}

  static ArrayNode of(KnownPumps pumps) {
    ArrayNode all = Json.array();
    pumps.all().forEach(pump -> all.add(of(pump)));
    return all;
  }

  private static ObjectNode of(KnownPump pump) {
    ObjectNode node = Json.object().put("id", pump.id());
    pump.description().ifPresent(text -> node.put("description", text));
    pump.location().ifPresent(text -> node.put("location", text));
    return node;
  }
}
