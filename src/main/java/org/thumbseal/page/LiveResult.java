package org.thumbseal.page;

import java.util.List;
import org.thumbseal.json.Json;
import org.thumbseal.json.ResultTree;
import org.thumbseal.record.ResultDocument;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.node.ObjectNode;

/** Of a result what the page shows; the numbers are those of the document. */
final class LiveResult {
  private LiveResult() {}

  static ObjectNode of(ResultDocument document) {
    ObjectNode whole = ResultTree.of(document);
    ObjectNode node = Json.object();
    copy(whole, node, List.of("id", "verdict", "reasons", "findings"));
    document.asset().ifPresent(id -> node.put("asset", id));
    copy((ObjectNode) whole.get("test"), node, List.of("startedAt"));
    ObjectNode measured = (ObjectNode) whole.get("measurements");
    copy(measured, node, List.of("riseTime", "maximumVacuum", "openVacuum"));
    var grade = document.grade();
    node.set("limits", LiveFacts.limits(grade.criteria(), grade.limits()));
    return node;
  }

  private static void copy(ObjectNode from, ObjectNode to, List<String> names) {
    for (String name : names) {
      JsonNode value = from.get(name);
      if (value != null) {
        to.set(name, value);
      }
    }
  }
}
