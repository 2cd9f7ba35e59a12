package org.thumbseal.page;

import java.util.Map;
import java.util.Optional;
import org.thumbseal.daemon.PortDesk;
import org.thumbseal.daemon.StartRefusal;
import org.thumbseal.json.Json;
import org.thumbseal.visit.ScannedCode;
import org.thumbseal.visit.StartedBy;
import org.thumbseal.visit.Visit;
import tools.jackson.databind.node.ObjectNode;

/** What can be done from the page: say which pump, what was looked at, and start. */
final class Deeds {
  private final Map<String, Deed> byPath =
      Map.of(
          "/do/start",
          this::start,
          "/do/visit",
          this::visit,
          "/do/scan",
          this::scan,
          "/do/search",
          this::search);

  private final Map<String, PortDesk> desks;
  private final PageSearches searches;

  /** Takes what was asked and gives the answer. */
  @FunctionalInterface
  private interface Deed {
    ObjectNode take(Asked asked) throws Refusal;
  }

  Deeds(Map<String, PortDesk> desks, PageSearches searches) {
    this.desks = Map.copyOf(desks);
    this.searches = searches;
  }

  boolean knows(String path) {
    return byPath.containsKey(path);
  }

  ObjectNode take(String path, ObjectNode body) throws Refusal {
    Deed deed = byPath.get(path);
    if (deed == null) {
      throw Refusal.badRequest("no such deed");
    }
    return deed.take(new Asked(body));
  }

  private PortDesk desk(Asked asked) throws Refusal {
    PortDesk desk = desks.get(asked.text("port"));
    if (desk == null) {
      throw new Refusal(404, "unknown-port", "there is no such port on this bench");
    }
    return desk;
  }

  private ObjectNode start(Asked asked) throws Refusal {
    PortDesk desk = desk(asked);
    giveWay(desk, asked);
    StartedBy by = asked.isByCommand() ? StartedBy.COMMAND : StartedBy.PAGE;
    Optional<StartRefusal> refusal = desk.start(by, asked.asset());
    if (refusal.isPresent()) {
      throw refused(refusal.get());
    }
    return Json.object();
  }

  private static Refusal refused(StartRefusal why) {
    return new Refusal(409, why.code(), why.text());
  }

  private ObjectNode visit(Asked asked) throws Refusal {
    PortDesk desk = desk(asked);
    giveWay(desk, asked);
    desk.visit(new Visit(asked.asset(), asked.checks()));
    return Json.object();
  }

  /** The test of a pump that is named is none of a search, whose tests bear no name. */
  private void giveWay(PortDesk desk, Asked asked) throws Refusal {
    if (asked.asset().isPresent()) {
      searches.giveWay(desk);
    }
  }

  private ObjectNode search(Asked asked) throws Refusal {
    PortDesk desk = desk(asked);
    String what = asked.text("what");
    switch (what) {
      case "begin" ->
          searches.begin(
              desk, asked.asset().orElseThrow(() -> Refusal.badRequest("'asset' is missing")));
      case "back" -> searches.back(desk, asked.count("step"));
      case "forward" -> searches.forward(desk, asked.count("step"));
      case "rest" -> searches.rest(desk, asked.count("step"));
      case "go-on" -> searches.goOn(desk, asked.count("step"));
      case "end" -> searches.end(desk, asked.count("step"));
      case "seal" -> searches.seal(desk, asked.count("step"));
      default -> throw Refusal.badRequest("a search knows no such deed");
    }
    return Json.object();
  }

  private ObjectNode scan(Asked asked) throws Refusal {
    ScannedCode code = asked.scanned();
    return Json.object().put("asset", code.asset()).put("from", code.from().code());
  }
}
