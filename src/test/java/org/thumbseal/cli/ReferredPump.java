package org.thumbseal.cli;

import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.thumbseal.archive.Archive;
import org.thumbseal.json.ExampleDocument;
import org.thumbseal.json.Json;
import org.thumbseal.seal.KeyStore;
import org.thumbseal.seal.SigningKey;
import org.thumbseal.visit.CheckItem;
import tools.jackson.databind.node.ArrayNode;
import tools.jackson.databind.node.ObjectNode;

/**
 * A pump with a past, really sealed: golden captures on other days, checks, and words about it. The
 * scenario is invented.
 */
final class ReferredPump {
  static final String ASSET = "SP-014";
  private static final Path FIXTURES = Path.of("fixtures", "captures");

  private final Path results;
  private final SigningKey key;
  private String asset = ASSET;
  private int number;

  ReferredPump(Path results, Path keyFile) throws Exception {
    this.results = results;
    this.key =
        Files.exists(keyFile) ? KeyStore.load(keyFile).key() : KeyStore.create(keyFile).key();
  }

  /** The same bench with another pump on it. */
  ReferredPump named(String id) {
    asset = id;
    return this;
  }

  /** A test of a golden capture on a day; checks are item=state or item=state=part=reason. */
  Path test(String fixture, String day, String... checks) throws Exception {
    byte[] document = Files.readAllBytes(FIXTURES.resolve(fixture + ".json"));
    ObjectNode result = ExampleDocument.numbered(document, ++number);
    result.putObject("asset").put("id", asset);
    ((ObjectNode) result.get("test")).put("startedAt", day + "T07:15:00Z");
    result.remove("checks");
    if (checks.length > 0) {
      checks(result.putArray("checks"), List.of(checks));
    }
    try (Archive archive = Archive.open(results, key)) {
      return archive
          .store(result, Files.readAllBytes(FIXTURES.resolve(fixture + ".log")))
          .document();
    }
  }

  private static void checks(ArrayNode array, List<String> said) {
    for (CheckItem item : CheckItem.values()) {
      String[] parts =
          said.stream()
              .filter(each -> each.startsWith(item.code() + "="))
              .findFirst()
              .orElse("=not-checked")
              .split("=", -1);
      ObjectNode check = array.addObject().put("item", item.code()).put("state", parts[1]);
      if (parts.length > 2) {
        check.put("part", parts[2]);
      }
      if (parts.length > 3) {
        check.put("reason", parts[3]);
      }
    }
  }

  /** What a person did on a day. */
  Path deed(String work, String day, String note) throws Exception {
    ObjectNode tree =
        Json.object().put("schema", "thumbseal-inspection/1").put("kind", "inspection");
    tree.put("id", String.format(Locale.ROOT, "%08x-0000-8000-8000-00000000000d", ++number));
    tree.putObject("asset").put("id", asset);
    tree.put("work", work).put("on", day).put("by", "M. Otieno").put("inOrder", true);
    if (!note.isEmpty()) {
      tree.put("note", note);
    }
    return document(tree.put("recordedAt", day + "T10:00:00.000Z"));
  }

  /** The end of a search for a leak, as far as a referral reads it. */
  Path search(String day, String text, String advice) throws Exception {
    ObjectNode tree =
        Json.object().put("schema", "thumbseal-leak-search/1").put("kind", "leak-search");
    tree.put("id", String.format(Locale.ROOT, "%08x-0000-8000-8000-00000000001e", ++number));
    tree.putObject("asset").put("id", asset);
    tree.put("by", "A. Nurse").put("searchedAt", day + "T11:00:00.000Z");
    tree.putObject("conclusion").put("text", text).put("advice", advice);
    return document(tree);
  }

  private Path document(ObjectNode tree) throws Exception {
    tree.putObject("software").put("name", "Thumbseal").put("version", "0.1.0");
    try (Archive archive = Archive.open(results, key)) {
      return archive.store(tree).document();
    }
  }

  /** Two years of a pump that went from good to leaking, with everything that a record can hold. */
  List<Path> wholeLife() throws Exception {
    List<Path> files = new ArrayList<>();
    LocalDate day = LocalDate.parse("2024-12-02");
    for (int month = 0; month < 12; month++) {
      files.add(test("sound", day.plusMonths(month).toString(), "gasket=ok", "outside=ok"));
    }
    files.add(
        test("sound", "2025-12-01", "gasket=replaced=G-12, 40 mm=hard", "cord=ok", "filter=ok"));
    files.add(deed("yearly-inspection", "2025-12-15", "earth bond 0.08 ohm"));
    files.add(deed("sterilisation", "2026-01-05", ""));
    files.add(test("restriction", "2026-01-07", "filter=not-ok==discoloured", "jar=ok"));
    files.add(test("sound", "2026-01-07", "filter=replaced=hydrophobic filter, 26 mm=discoloured"));
    files.add(test("slipped", "2026-02-02"));
    files.add(deed("infectious-case", "2026-02-20", ""));
    files.add(test("leak", "2026-03-02", "gasket=ok", "tubing=replaced=8 mm, 1.5 m=split"));
    files.add(test("worn-pump", "2026-03-03", "gasket=replaced=G-12, 40 mm=to try"));
    files.add(test("leak", "2026-03-04", "cord=ok", "jar=ok"));
    return files;
  }

  /** As much of everything as anybody could ever say, in words as long as they may be. */
  void tooMuch() throws Exception {
    wholeLife();
    String part = "a part with a name of two hundred characters as somebody wrote it ".repeat(3);
    for (int i = 1; i < 13; i++) {
      List<String> checks = new ArrayList<>();
      for (CheckItem item : CheckItem.values()) {
        checks.add(item.code() + "=replaced=" + part + "=" + part);
      }
      String day = String.format(Locale.ROOT, "2026-03-%02d", i);
      test(i % 2 == 0 ? "leak" : "no-vacuum", day, checks.toArray(String[]::new));
    }
    for (String work :
        List.of("repair", "yearly-inspection", "sterilisation", "infectious-case", "repair")) {
      deed(work, "2026-03-28", "W".repeat(1000));
    }
    deed("infectious-case", "2026-03-29", "W".repeat(1000));
    search("2026-03-28", "Between jar and filter air gets in. ".repeat(27), "Look. ".repeat(160));
  }
}
