package org.thumbseal.index;

import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Stream;
import org.thumbseal.archive.LargeDirectory;
import org.thumbseal.seal.KeyStore;
import org.thumbseal.seal.TrustStore;
import tools.jackson.databind.node.ArrayNode;
import tools.jackson.databind.node.ObjectNode;

/**
 * How long an index of many results takes: to be made, to be brought up to date when nothing is
 * new, to answer; and whether the one that grew equals the one made anew. On SQLite, and on
 * PostgreSQL where there is a server.
 *
 * <pre>
 * mvn -q test-compile exec:java -Dexec.classpathScope=test \
 *     -DmainClass=org.thumbseal.index.IndexStudy -Dexec.args="200000"
 * </pre>
 *
 * <p>Peak memory is the kernel's (VmHWM) and needs Linux; it counts the making of the results too.
 */
final class IndexStudy {
  private static final int PUMPS = 500;
  private static final List<String> ITEMS =
      List.of("gasket", "jar", "tubing", "filter", "cord", "overflow", "outside");

  private IndexStudy() {}

  /** How many results; then, if wanted, the kinds of base. */
  @SuppressWarnings("SystemOut") // It is run by hand and prints a table.
  public static void main(String[] args) throws Exception {
    int documents = Integer.parseInt(args[0]);
    Path folder = Files.createTempDirectory("index-study");
    try {
      var key = KeyStore.create(folder.resolve("key/k.pem")).key();
      Path results = Files.createDirectory(folder.resolve("results"));
      timed(
          "results made",
          documents,
          () -> LargeDirectory.write(results, documents, key, IndexStudy::test));
      TrustStore trust = TrustStore.of(key.verifyingKey());
      for (Bases base :
          args.length > 1 ? List.of(Bases.valueOf(args[1])) : List.of(Bases.values())) {
        System.out.println(base);
        study(base.fresh(folder), results, trust, documents);
      }
      try (Stream<String> lines = Files.lines(Path.of("/proc/self/status"))) {
        lines.filter(line -> line.startsWith("VmHWM")).forEach(System.out::println);
      }
    } finally {
      new ProcessBuilder("rm", "-rf", folder.toString()).start().waitFor();
    }
  }

  /** Of one of 500 pumps; now and then with a part that was replaced. */
  private static ObjectNode test(int number) {
    ObjectNode document = BenchResults.document(number, "SP-" + number % PUMPS);
    ArrayNode checks = document.putArray("checks");
    for (String item : ITEMS) {
      String state = (number + item.length()) % 40 == 0 ? "replaced" : "ok";
      checks.addObject().put("item", item).put("state", state);
    }
    return document;
  }

  private static void study(RecordsAddress address, Path results, TrustStore trust, int documents)
      throws Exception {
    try (Records records = Records.open(address, r -> {})) {
      timed("taken in", documents, () -> records.refresh(results, trust));
    }
    timed(
        "opened, refreshed with nothing new",
        1,
        () -> {
          try (Records records = Records.open(address, r -> {})) {
            records.refresh(results, trust);
          }
        });
    try (Records records = Records.open(address, r -> {})) {
      Path late = results.resolve("2026/late.txt");
      Files.createFile(late);
      Files.delete(late);
      timed("refreshed, all names looked at", 1, () -> records.refresh(results, trust));
      List<IndexedAsset> assets = new ArrayList<>();
      timed("all pumps with their latest", 1, () -> assets.addAll(records.assets()));
      String one = assets.get(assets.size() / 2).asset();
      timed("tests of " + one + ", " + assets.size() + " pumps", 1, () -> records.tests(one));
      timed(
          "last works and verdicts",
          1,
          () -> {
            records.lastWorks();
            records.lastVerdicts();
          });
      timed(
          "parts of all in a year",
          1,
          () ->
              records.parts(
                  Optional.empty(),
                  Instant.parse("2026-01-01T00:00:00Z"),
                  Instant.parse("2027-01-01T00:00:00Z")));
      timed("all tests shown", documents, () -> records.forEachTest(test -> {}));
      Map<String, Long> grown = digest(address);
      timed("made anew", documents, () -> records.rebuild(List.of(results), trust));
      boolean same = grown.equals(digest(address));
      System.out.printf(
          Locale.ROOT, "%-45s %s%n", "made anew = grown, " + grown.size() + " rows", same);
    }
    if (address.file().isPresent()) {
      System.out.printf("%-45s %d MiB%n", "file", Files.size(address.file().get()) >> 20);
    }
  }

  /** Each row by a number of its text, so that millions can be compared. */
  private static Map<String, Long> digest(RecordsAddress address) throws Exception {
    Map<String, Long> sums = new HashMap<>();
    try (Session session = Base.open(address, Map.of())) {
      for (Table table : Table.CONTENT) {
        String order = table.columns().contains("name") ? "id, name" : "id";
        String text =
            "COALESCE(CAST("
                + String.join(" AS TEXT), '-') || '|' || COALESCE(CAST(", table.columns())
                + " AS TEXT), '-')";
        session.list(
            "SELECT " + text + " FROM " + table.sql() + " ORDER BY " + order,
            row -> sums.merge(row.getString(1).hashCode() + table.sql(), 1L, Long::sum));
      }
    }
    return sums;
  }

  /** Something that is timed. */
  @FunctionalInterface
  private interface Timed {
    void run() throws Exception;
  }

  private static void timed(String what, int many, Timed work) throws Exception {
    long start = System.nanoTime();
    work.run();
    double seconds = (System.nanoTime() - start) / 1e9;
    String rate = many > 1 ? String.format(Locale.ROOT, "%8.0f/s", many / seconds) : "";
    System.out.printf(Locale.ROOT, "%-45s %9.3f s %s%n", what, seconds, rate);
  }
}
