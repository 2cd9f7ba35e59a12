package org.thumbseal.page;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.thumbseal.json.Json;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.node.ArrayNode;
import tools.jackson.databind.node.ObjectNode;

/** What the pages were told of a port, and what there is to tell since. */
final class PortNews {
  /** They change with each sample; the points say it sooner. */
  private static final Set<String> RESTLESS = Set.of("vacuum", "clock");

  private final LivePort port;
  private ObjectNode told = Json.object();
  private long drawn;

  PortNews(LivePort port) {
    this.port = port;
  }

  /**
   * The whole state with the curve, as it was told last: what is newer comes with the next changes,
   * for those that look already would miss it otherwise.
   */
  ObjectNode whole() {
    ObjectNode whole = told.deepCopy();
    port.pointsUntil(drawn, whole.putArray("curve"));
    return whole;
  }

  /** The events since, in order; empty as long as nothing happens. */
  List<byte[]> since(boolean restless) {
    List<byte[]> events = new ArrayList<>(2);
    ArrayNode points = Json.array();
    drawn = port.points(drawn, points);
    ObjectNode changes = changes(restless);
    if (!points.isEmpty()) {
      events.add(PageEvent.of("points", named().set("points", points)));
    }
    if (!changes.isEmpty()) {
      events.add(PageEvent.of("port", named().setAll(changes)));
    }
    return events;
  }

  private ObjectNode named() {
    return Json.object().put("port", told.path("port").asString());
  }

  private ObjectNode changes(boolean restless) {
    ObjectNode now = port.tree();
    ObjectNode changes = Json.object();
    for (Map.Entry<String, JsonNode> member : now.properties()) {
      if (!member.getValue().equals(told.get(member.getKey()))) {
        changes.set(member.getKey(), member.getValue());
      }
    }
    told.propertyNames().stream().filter(n -> !now.has(n)).forEach(changes::putNull);
    if (!restless && RESTLESS.containsAll(changes.propertyNames())) {
      return Json.object();
    }
    told = now;
    return changes;
  }
}
