package org.thumbseal.feed;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.DateTimeException;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import org.thumbseal.archive.Durable;
import org.thumbseal.json.Canonical;
import org.thumbseal.json.Json;
import org.thumbseal.json.JsonGate;
import org.thumbseal.json.JsonRefusedException;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.node.ArrayNode;
import tools.jackson.databind.node.ObjectNode;

/**
 * The file that says how far one target has acknowledged. It holds no documents, so that whatever
 * happens to it none can be lost: without it, or with an older one, some are sent a second time.
 */
final class OutboxRecord {
  private static final String SCHEMA = "thumbseal-feed/1";

  private final Path file;
  private final String target;

  OutboxRecord(Path folder, FeedTarget target) {
    this.file = folder.resolve(target.key() + ".json");
    this.target = target.text();
  }

  Path file() {
    return file;
  }

  /**
   * What was kept; new where nothing was.
   *
   * @throws JsonRefusedException if the file is there and says nothing that can be used
   */
  OutboxState load() throws JsonRefusedException {
    return Files.exists(file) ? read(JsonGate.read(file)) : OutboxState.NEW;
  }

  private static OutboxState read(ObjectNode tree) throws JsonRefusedException {
    if (!SCHEMA.equals(tree.path("schema").asString(""))) {
      throw new JsonRefusedException("is no record of an outbox");
    }
    Map<String, Long> upTo = new TreeMap<>();
    for (JsonNode chain : tree.path("chains")) {
      upTo.put(text(chain, "key"), number(chain, "upTo"));
    }
    List<Gap> gaps = new ArrayList<>();
    for (JsonNode gap : tree.path("gaps")) {
      gaps.add(
          new Gap(text(gap, "key"), number(gap, "from"), number(gap, "to"), text(gap, "refused")));
    }
    return new OutboxState(
        new Progress(upTo, gaps), instant(tree.path("since")), text(tree, "trouble"));
  }

  private static String text(JsonNode node, String name) {
    return node.path(name).asString("");
  }

  private static long number(JsonNode node, String name) throws JsonRefusedException {
    JsonNode number = node.path(name);
    if (!number.isIntegralNumber() || number.longValue() < 1) {
      throw new JsonRefusedException("holds a number that cannot be");
    }
    return number.longValue();
  }

  private static Optional<Instant> instant(JsonNode node) {
    try {
      return node.isString() ? Optional.of(Instant.parse(node.stringValue())) : Optional.empty();
    } catch (DateTimeException e) {
      return Optional.empty();
    }
  }

  /** Writes it anew, whole or not at all. */
  void save(OutboxState state) throws IOException {
    Durable.replace(file, Canonical.text(tree(state)));
  }

  private ObjectNode tree(OutboxState state) {
    ObjectNode tree = Json.object().put("schema", SCHEMA).put("to", target);
    ArrayNode chains = tree.putArray("chains");
    state.progress().upTo().forEach((key, n) -> chains.addObject().put("key", key).put("upTo", n));
    ArrayNode gaps = tree.putArray("gaps");
    for (Gap gap : state.progress().gaps()) {
      ObjectNode said = gaps.addObject().put("key", gap.kid());
      said.put("from", gap.from()).put("to", gap.to()).put("refused", gap.why());
    }
    state.since().ifPresent(since -> tree.put("since", since.toString()));
    return tree.put("trouble", state.trouble());
  }
}
