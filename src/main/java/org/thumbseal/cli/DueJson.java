package org.thumbseal.cli;

import java.util.Locale;
import org.thumbseal.care.Due;
import org.thumbseal.care.Work;
import org.thumbseal.json.Json;
import tools.jackson.databind.node.ObjectNode;

/** One thing that is due, for scripts; what is not known is absent. */
final class DueJson {
  private DueJson() {}

  static ObjectNode of(Due due) {
    ObjectNode tree = Json.object();
    tree.put(due.work() == Work.CALIBRATION ? "sensor" : "asset", due.pump().id());
    if (!due.pump().description().isEmpty()) {
      tree.put("description", due.pump().description());
    }
    if (!due.pump().location().isEmpty()) {
      tree.put("location", due.pump().location());
    }
    tree.put("work", due.work().code());
    tree.put("due", due.term().on().toString());
    due.term().last().ifPresent(last -> tree.put("last", last.toString()));
    tree.put("cause", code(due.term().cause()));
    return tree.put("urgency", code(due.urgency()));
  }

  private static String code(Enum<?> word) {
    return word.name().toLowerCase(Locale.ROOT).replace('_', '-');
  }
}
