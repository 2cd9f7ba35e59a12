package org.thumbseal.cli;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.EnumMap;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import org.thumbseal.fleet.Fate;
import org.thumbseal.fleet.Hospital;
import org.thumbseal.fleet.Life;
import org.thumbseal.grade.Verdict;
import org.thumbseal.index.IndexedTest;
import org.thumbseal.index.Records;
import org.thumbseal.index.RecordsAddress;
import org.thumbseal.seal.KeyStore;
import org.thumbseal.seal.SigningKey;
import org.thumbseal.seal.TrustStore;

/**
 * Makes a fleet that was tested for three years, all its documents sealed, and prints what the
 * trend said of it month by month against what then came. The commands can be tried on what it
 * leaves.
 *
 * <pre>
 * java -cp target/test-classes:target/classes:$(cat target/classpath) \
 *     org.thumbseal.cli.FleetStudy FOLDER [SEED]
 * </pre>
 */
final class FleetStudy {
  private FleetStudy() {}

  /** A folder that is made, or judged again where it is there; then the seed. */
  @SuppressWarnings("SystemOut") // It is run by hand and prints a table.
  public static void main(String[] args) throws Exception {
    Path folder = Path.of(args[0]);
    Hospital hospital = new Hospital(args.length > 1 ? Long.parseLong(args[1]) : 1);
    Path results = folder.resolve("results");
    Files.createDirectories(folder);
    SigningKey key = KeyStore.loadOrCreate(folder.resolve("key/k.pem")).key();
    long start = System.nanoTime();
    boolean remembered = Files.exists(results);
    if (!remembered) {
      int documents = hospital.live(results, key);
      System.out.printf(Locale.ROOT, "%d documents sealed in %.0f s%n", documents, since(start));
    }
    hospital.writeRegister(folder.resolve("pumps.csv"));
    hospital.writeStock(folder.resolve("parts.csv"));
    start = System.nanoTime();
    try (Records records =
        Records.open(RecordsAddress.in(results), note -> System.out.println(note))) {
      long added = records.refresh(results, TrustStore.of(key.verifyingKey())).added();
      System.out.printf(Locale.ROOT, "%d taken in in %.1f s%n", added, since(start));
      if (remembered) {
        hospital.remember(verdicts(hospital, records));
      }
      start = System.nanoTime();
      print(judged(hospital, records));
      System.out.printf(Locale.ROOT, "judged month by month in %.0f s%n", since(start));
    }
  }

  private static Map<String, Verdict> verdicts(Hospital hospital, Records records)
      throws Exception {
    Map<String, Verdict> verdicts = new HashMap<>();
    for (Life life : hospital.lives()) {
      for (IndexedTest test : records.tests(life.card().id(), List.of("riseTime"))) {
        verdicts.put(
            Hospital.mark(life.card().id(), test.startedAt().orElseThrow()),
            Verdict.valueOf(test.verdict().toUpperCase(Locale.ROOT)));
      }
    }
    return verdicts;
  }

  private static double since(long start) {
    return (System.nanoTime() - start) / 1e9;
  }

  static Map<Fate, Foresight> judged(Hospital hospital, Records records) throws Exception {
    Map<Fate, Foresight> all = new EnumMap<>(Fate.class);
    for (Life life : hospital.lives()) {
      all.computeIfAbsent(life.fate(), f -> new Foresight())
          .take(life, PastTests.of(records, life.card().id()));
    }
    return all;
  }

  @SuppressWarnings("SystemOut")
  private static void print(Map<Fate, Foresight> all) {
    System.out.println(
        "kind: pumps, tests, failures, with a date in the 3 months before | months with a date, of"
            + " these never to fail in 36 months, pumps so named | months with an earliest within 3,"
            + " failed within 3, within 6");
    Foresight sum = new Foresight();
    all.forEach(
        (fate, one) -> {
          System.out.printf(Locale.ROOT, "%-18s %s%n", fate, one.line());
          sum.add(one);
        });
    System.out.printf(Locale.ROOT, "%-18s %s%n", "all", sum.line());
  }
}
