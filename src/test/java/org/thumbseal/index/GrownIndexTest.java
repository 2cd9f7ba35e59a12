package org.thumbseal.index;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.Random;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import org.thumbseal.json.Canonical;
import org.thumbseal.json.JsonGate;
import org.thumbseal.seal.LedgerPosition;
import org.thumbseal.seal.Seal;
import org.thumbseal.seal.SigningKey;

/** However an index came about, it is the one that is made anew from the same files. */
class GrownIndexTest {
  private static final int TESTS = 24;
  private static final int ORDERS = 12;

  @TempDir private Path folder;
  private BenchResults bench = new BenchResults(Path.of(""), SigningKey.generate());
  private final List<Path> files = new ArrayList<>();

  /** Tests, corrections of corrections, void ones, forgeries, and one test graded twice. */
  @BeforeEach
  void results() throws Exception {
    bench = BenchResults.in(folder.resolve("all"));
    List<Path> tests = new ArrayList<>();
    for (int i = 1; i <= TESTS; i++) {
      tests.add(bench.test(i, "SP-" + i % 5));
    }
    for (int i = 0; i < 6; i++) {
      bench.move(tests.get(i), "SP-9");
      bench.voided(tests.get(i + 3), true);
    }
    bench.move(tests.get(0), "SP-8");
    bench.voided(tests.get(4), false);
    bench.inspection(1, "SP-1", "sterilisation", "2026-04-01");
    BenchResults.tamper(tests.get(20));
    Path year = Objects.requireNonNull(tests.get(0).getParent());
    Files.copy(tests.get(7), year.resolve("a-copy.json"));
    gradedAnew(tests.get(8), year.resolve("graded-anew.json"));
    try (var all = Files.walk(bench.path())) {
      all.filter(f -> f.toString().endsWith(".json") && !f.endsWith("head.json"))
          .forEach(f -> files.add(bench.path().relativize(f)));
    }
    Collections.sort(files);
  }

  private void gradedAnew(Path test, Path to) throws Exception {
    var document = JsonGate.read(test);
    document.put("verdict", "inconclusive");
    var position = new LedgerPosition(900, "0".repeat(64), Optional.empty());
    Files.writeString(to, Canonical.text(Seal.seal(document, position, bench.key())) + "\n");
  }

  @ParameterizedTest
  @EnumSource
  void anyOrderOfArrivalGivesTheSameRows(Bases base) throws Exception {
    RecordsAddress whole = base.fresh(folder);
    try (Records records = Records.open(whole, r -> {})) {
      records.refresh(bench.path(), bench.trust());
    }
    List<String> expected = IndexDump.of(whole);
    assertThat(expected).hasSizeGreaterThan(200);
    for (int seed = 1; seed <= ORDERS; seed++) {
      RecordsAddress grown = base.fresh(folder);
      Path growing = Files.createDirectories(folder.resolve(base + "-" + seed));
      grow(grown, growing, new Random(seed));
      assertThat(IndexDump.difference(expected, IndexDump.of(grown))).as("seed %d", seed).isEmpty();
      try (Records records = Records.open(grown, r -> {})) {
        records.rebuild(List.of(growing), bench.trust());
      }
      assertThat(IndexDump.difference(expected, IndexDump.of(grown)))
          .as("rebuilt, seed %d", seed)
          .isEmpty();
    }
  }

  /** Files come one by one, some go again for a while, and now and then the index is refreshed. */
  private void grow(RecordsAddress address, Path results, Random random) throws Exception {
    List<Path> order = new ArrayList<>(files);
    Collections.shuffle(order, random);
    List<Path> late = new ArrayList<>();
    Files.copy(bench.path().resolve("head.json"), results.resolve("head.json"));
    try (Records records = Records.open(address, r -> {})) {
      for (Path file : order) {
        Path put = put(file, results);
        if (random.nextInt(3) == 0) {
          records.refresh(results, bench.trust());
          if (random.nextInt(3) == 0) {
            Files.delete(put);
            late.add(file);
          }
        }
      }
      records.refresh(results, bench.trust());
      for (Path file : late) {
        put(file, results);
      }
      records.refresh(results, bench.trust());
    }
  }

  private Path put(Path file, Path results) throws Exception {
    Path target = results.resolve(file);
    Files.createDirectories(target.getParent());
    return Files.copy(bench.path().resolve(file), target);
  }
}
