package org.thumbseal.cli;

import java.util.Locale;
import org.thumbseal.json.Json;
import org.thumbseal.spares.Demand;
import org.thumbseal.spares.Outlook;
import org.thumbseal.spares.StockLine;
import tools.jackson.databind.node.ObjectNode;

/** A part, for scripts; what is not known is absent. */
final class StockJson {
  private StockJson() {}

  static ObjectNode of(Outlook part) {
    StockLine line = part.line();
    ObjectNode tree = Json.object().put("part", line.part()).put("item", line.item());
    tree.put("now", part.stock().now()).put("usedSinceCount", part.stock().used());
    tree.put("miscounted", part.stock().miscounted());
    tree.put("minimum", line.supply().minimum()).put("leadDays", line.supply().leadDays());
    tree.put("onOrder", line.supply().onOrder()).put("order", part.amount());
    tree.put("state", part.state().name().toLowerCase(Locale.ROOT).replace('_', '-'));
    part.demand().ifPresent(demand -> use(tree, demand));
    part.leadUse().ifPresent(most -> tree.put("usedInLeadTimeAtMost", most));
    part.orderBy().ifPresent(day -> tree.put("orderBy", day.toString()));
    ObjectNode others = Json.object();
    line.others().forEach(others::put);
    tree.set("others", others);
    return tree;
  }

  private static void use(ObjectNode tree, Demand demand) {
    tree.put("usedPerMonth", rounded(demand.perMonth()));
    demand
        .interval()
        .ifPresent(
            i ->
                tree.put("usedPerMonthLow", rounded(i.low()))
                    .put("usedPerMonthHigh", rounded(i.high())));
  }

  /** To a hundredth: the rest is not known. */
  private static double rounded(double value) {
    return Math.rint(value * 100) / 100;
  }
}
