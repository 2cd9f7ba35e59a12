package org.thumbseal.cli;

import java.util.Optional;
import org.thumbseal.json.Json;
import org.thumbseal.register.Register;
import org.thumbseal.register.RegisterMistake;
import org.thumbseal.register.RegisteredAsset;
import org.thumbseal.register.RegisteredAsset.Intervals;
import org.thumbseal.register.RegisteredAsset.Label;
import tools.jackson.databind.node.ArrayNode;
import tools.jackson.databind.node.ObjectNode;

/** A register for programs; members are called as its columns, and what is not said is absent. */
final class RegisterJson {
  private RegisterJson() {}

  static ObjectNode of(Register register) {
    ObjectNode tree = Json.object();
    ArrayNode assets = tree.putArray("assets");
    register.assets().forEach(asset -> assets.add(of(asset)));
    ArrayNode others = tree.putArray("otherColumns");
    register.otherColumns().forEach(others::add);
    ArrayNode warnings = tree.putArray("warnings");
    register.warnings().forEach(warning -> warnings.add(of(warning)));
    return tree;
  }

  private static ObjectNode of(RegisteredAsset asset) {
    ObjectNode node = Json.object().put("row", asset.row()).put("id", asset.id());
    Label label = asset.label();
    put(node, "description", label.description());
    put(node, "location", label.location());
    put(node, "serial", label.serial());
    asset.equipment().jarLitres().ifPresent(v -> node.put("jar_l", v));
    asset.equipment().ratedLitresPerMinute().ifPresent(v -> node.put("rated_l_min", v));
    asset.criteria().ifPresent(c -> node.put("criteria", c.file()));
    asset.inService().ifPresent(d -> node.put("in_service", d.toString()));
    Intervals every = asset.intervals();
    node.put("status", asset.status().code()).put("interval_months", every.check());
    node.put("inspection_months", every.inspection()).put("sterilise_months", every.sterilise());
    ObjectNode others = node.putObject("others");
    asset.others().forEach(others::put);
    return node;
  }

  private static void put(ObjectNode node, String name, Optional<String> text) {
    text.ifPresent(t -> node.put(name, t));
  }

  private static ObjectNode of(RegisterMistake warning) {
    return Json.object()
        .put("row", warning.row())
        .put("column", warning.column())
        .put("text", warning.text());
  }
}
