package org.thumbseal.index;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import org.thumbseal.archive.LargeDirectory;
import org.thumbseal.json.ExampleDocument;
import org.thumbseal.json.Json;
import org.thumbseal.seal.LedgerEntry;
import org.thumbseal.seal.LedgerPosition;
import org.thumbseal.seal.Sha256;
import org.thumbseal.seal.SigningKey;
import org.thumbseal.seal.TrustStore;
import tools.jackson.databind.node.ArrayNode;
import tools.jackson.databind.node.ObjectNode;

/**
 * Monthly tests of a thousand pumps, and their inspections, that two benches sealed; made fast, but
 * each one with a real seal.
 *
 * @param all how many documents
 * @param key that seals them
 */
record ManyResults(int all, SigningKey key) {
  static final int PUMPS = 1000;

  /** Of so many one is an inspection. */
  private static final int INSPECTION = 50;

  private static final Duration MONTH = Duration.ofHours(730);
  private static final Instant LAST = Instant.parse("2026-11-20T08:00:00Z");
  private static final List<String> ITEMS =
      List.of("gasket", "jar", "tubing", "filter", "cord", "overflow", "outside");
  private static final ObjectNode EXAMPLE = ExampleDocument.unsealed();

  /** Writes the half of a bench, 0 or 1; gives its directory. */
  Path write(Path folder, int bench) throws IOException {
    Path results = Files.createDirectories(folder.resolve("bench-" + bench));
    LargeDirectory.write(results, all / 2, key, number -> document(2 * number + bench));
    return results;
  }

  /**
   * Puts into an index what the documents say, as if they had been read: neither files nor seals,
   * so that questions can be tried on many more of them. The index knows an empty directory.
   */
  Path pretend(Path folder, RecordsAddress address) throws Exception {
    Path results = Files.createDirectories(folder.resolve("pretended"));
    try (Records records = Records.open(address, r -> {})) {
      records.refresh(results, TrustStore.of(key.verifyingKey()));
    }
    try (Session session = Base.open(address, Map.of())) {
      Ingest ingest = new Ingest(session, 1);
      List<Entry> batch = new ArrayList<>();
      for (int number = 1; number <= all; number++) {
        batch.add(entry(number));
        if (batch.size() == 1000 || number == all) {
          ingest.write(batch);
          batch.clear();
        }
      }
    }
    return results;
  }

  private Entry entry(int number) throws Exception {
    ObjectNode document = document(number);
    String digest = Sha256.hex(document.path("id").asString().getBytes(StandardCharsets.UTF_8));
    String kid = key.verifyingKey().kid();
    String name = number + ".json";
    LedgerEntry place = new LedgerEntry(kid, LedgerPosition.FIRST, digest);
    DocumentRows rows = new DocumentRows(document, place, name);
    return new Entry(
        "",
        name,
        Optional.of(kid),
        Optional.of(new Entry.Content(rows.id(), digest, rows.all(), Optional.empty())),
        "");
  }

  ObjectNode document(int number) {
    String asset = String.format(Locale.ROOT, "SP-%04d", number % PUMPS);
    String id = String.format(Locale.ROOT, "%08x-5b7d-8c41-9e02-6a1d4f8b2c70", number);
    Instant at = LAST.minus(MONTH.multipliedBy((all - number) / PUMPS)).plusSeconds(number % PUMPS);
    return number / PUMPS % INSPECTION == 1 ? inspection(id, asset, at) : test(id, asset, at);
  }

  private static ObjectNode inspection(String id, String asset, Instant at) {
    ObjectNode tree = Json.object().put("schema", "thumbseal-inspection/1");
    tree.put("kind", "inspection").put("id", id).putObject("asset").put("id", asset);
    tree.put("work", "yearly-inspection").put("on", at.toString().substring(0, 10));
    return tree.put("by", "A. Mensah").put("inOrder", true).put("recordedAt", at.toString());
  }

  /** With a rise time that scatters, and now and then a part that was replaced. */
  private static ObjectNode test(String id, String asset, Instant at) {
    ObjectNode document = EXAMPLE.deepCopy().put("id", id);
    document.putObject("asset").put("id", asset);
    ((ObjectNode) document.get("test")).put("startedAt", at.toString());
    int mixed = id.hashCode() * 0x9E3779B9;
    ((ObjectNode) document.at("/measurements/riseTime")).put("value", 7 + (mixed >>> 20) / 4096.0);
    ArrayNode checks = document.putArray("checks");
    for (int i = 0; i < ITEMS.size(); i++) {
      String state = (mixed >>> i) % 40 == 0 ? "replaced" : "ok";
      checks.addObject().put("item", ITEMS.get(i)).put("state", state);
    }
    return document;
  }
}
