package org.thumbseal.page;

import org.thumbseal.daemon.Started;
import org.thumbseal.json.Decimals;
import org.thumbseal.json.Json;
import org.thumbseal.visit.Check;
import org.thumbseal.visit.Visit;
import tools.jackson.databind.node.ArrayNode;
import tools.jackson.databind.node.ObjectNode;

/** What people said at a port, as the page has it. */
final class VisitTree {
  private VisitTree() {}

  static ObjectNode of(Visit visit) {
    ObjectNode node = Json.object();
    visit.asset().ifPresent(asset -> node.put("asset", asset));
    ArrayNode checks = node.putArray("checks");
    visit.checks().forEach(check -> checks.add(of(check)));
    return node.put("forbidsMains", visit.forbidsMains());
  }

  static ObjectNode of(Check check) {
    ObjectNode node =
        Json.object().put("item", check.item().code()).put("state", check.state().code());
    check.part().ifPresent(part -> node.put("part", part));
    check.reason().ifPresent(reason -> node.put("reason", reason));
    return node;
  }

  static ObjectNode of(Started start) {
    return Json.object()
        .put("by", start.by().code())
        .put("secondsLeft", Decimals.round(start.secondsLeft(), 1));
  }
}
