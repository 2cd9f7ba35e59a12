package org.thumbseal.index;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import org.thumbseal.json.Json;
import org.thumbseal.seal.SigningKey;
import org.thumbseal.seal.TrustStore;
import tools.jackson.databind.node.ArrayNode;
import tools.jackson.databind.node.ObjectNode;

/** What goes in, what is kept out, and how it stands. */
class RecordsTest {
  @TempDir private Path folder;
  private BenchResults bench = new BenchResults(Path.of(""), SigningKey.generate());

  @BeforeEach
  void bench() throws Exception {
    bench = BenchResults.in(folder.resolve("results"));
  }

  private Records open(RecordsAddress address) throws RecordsException {
    return Records.open(
        address,
        remark -> {
          throw new AssertionError(remark);
        });
  }

  private static void check(ObjectNode document, String item, String state, String part) {
    ArrayNode checks =
        document.get("checks") instanceof ArrayNode there ? there : document.putArray("checks");
    ObjectNode check = checks.addObject().put("item", item).put("state", state);
    if (!part.isEmpty()) {
      check.put("part", part);
    }
  }

  @ParameterizedTest
  @EnumSource
  void aTestComesBackWithWhatTheDocumentSays(Bases base) throws Exception {
    ObjectNode document = BenchResults.document(1, "SP-014");
    document.putArray("checks");
    check(document, "gasket", "replaced", "gasket 60 mm");
    check(document, "jar", "not-checked", "");
    check(document, "filter", "ok", "");
    Path file = bench.test(document);
    try (Records records = open(base.fresh(folder))) {
      assertThat(records.refresh(bench.path(), bench.trust()).added()).isEqualTo(1);
      IndexedTest test = records.tests("SP-014").get(0);

      assertThat(test.id()).isEqualTo(document.path("id").stringValue());
      assertThat(test.startedAt()).contains(Instant.parse("2026-03-02T07:16:00Z"));
      assertThat(test.verdict()).isEqualTo(document.path("verdict").stringValue());
      assertThat(test.origin().path()).isEqualTo("2026/" + file.getFileName());
      assertThat(test.origin().sequence()).isEqualTo(1);
      var rise = document.at("/measurements/riseTime");
      assertThat(test.quantity("riseTime"))
          .contains(
              new IndexedQuantity(
                  rise.path("value").doubleValue(),
                  "s",
                  Optional.of(rise.path("expandedUncertainty").doubleValue()),
                  Optional.of(2.0),
                  Optional.empty()));
      assertThat(test.conditions().limits().riseTime()).contains(10.0);
      assertThat(test.conditions().limits().maximum())
          .contains(document.at("/criteria/maximumVacuumLimit/value").doubleValue());
      assertThat(test.conditions().ambient())
          .contains(document.at("/test/ambient/quantity/value").doubleValue());
      assertThat(test.details().checks())
          .containsExactly(
              new IndexedTest.IndexedCheck(
                  "gasket", "replaced", Optional.of("gasket 60 mm"), Optional.empty()),
              new IndexedTest.IndexedCheck("filter", "ok", Optional.empty(), Optional.empty()));
      assertThat(
              records.parts(
                  Optional.of("SP-014"), Instant.EPOCH, Instant.parse("2027-01-01T00:00:00Z")))
          .containsExactly(
              new IndexedPart(
                  Optional.of("SP-014"),
                  test.startedAt(),
                  "gasket",
                  Optional.of("gasket 60 mm"),
                  test.id()));
    }
  }

  @ParameterizedTest
  @EnumSource
  void aSecondTimeChangesNothing(Bases base) throws Exception {
    bench.test(1, "SP-1");
    bench.test(2, "SP-2");
    RecordsAddress address = base.fresh(folder);
    try (Records records = open(address)) {
      assertThat(records.refresh(bench.path(), bench.trust()).added()).isEqualTo(2);
      List<String> before = IndexDump.of(address);
      assertThat(records.refresh(bench.path(), bench.trust()).added()).isZero();
      Path copy = folder.resolve("copy");
      copy(bench.path(), copy);
      assertThat(records.refresh(copy, bench.trust()).added()).isZero();
      assertThat(IndexDump.of(address)).containsAll(before);
      assertThat(records.assets()).containsExactly("SP-1", "SP-2");
    }
  }

  @ParameterizedTest
  @EnumSource
  void whatChangesFromTestToTestIsPartOfTheWhole(Bases base) throws Exception {
    ObjectNode document = BenchResults.document(1, "SP-1");
    var checks = document.putArray("checks");
    checks.addObject().put("item", "gasket").put("state", "replaced").put("part", "60 mm");
    checks.addObject().put("item", "jar").put("state", "ok");
    bench.test(document);
    try (Records records = open(base.fresh(folder))) {
      IndexedTest whole = bench.tests(records, "SP-1").get(0);
      IndexedTest part = records.tests("SP-1", List.of("riseTime", "maximumVacuum")).get(0);

      assertThat(whole.details().quantities()).hasSizeGreaterThan(2);
      assertThat(part.details().quantities()).containsOnlyKeys("riseTime", "maximumVacuum");
      assertThat(whole.details().quantities()).containsAllEntriesOf(part.details().quantities());
      assertThat(whole.details().checks()).hasSize(2).containsAll(part.details().checks());
      assertThat(part.details().checks()).hasSize(1);
      assertThat(part.details().reasons()).isEmpty();
      assertThat(part.conditions()).isEqualTo(whole.conditions());
    }
  }

  private static void copy(Path from, Path to) throws Exception {
    try (var all = Files.walk(from)) {
      for (Path path : all.toList()) {
        Files.copy(path, to.resolve(from.relativize(path)));
      }
    }
  }

  @ParameterizedTest
  @EnumSource
  void whatIsNotVouchedForIsKeptOutAndNamed(Bases base) throws Exception {
    bench.test(1, "SP-1");
    BenchResults.tamper(bench.test(2, "SP-1"));
    BenchResults stranger = new BenchResults(bench.path(), SigningKey.generate());
    Path foreign = BenchResults.in(folder.resolve("other")).test(3, "SP-1");
    Files.copy(foreign, bench.path().resolve("2026").resolve(foreign.getFileName()));
    Files.writeString(bench.path().resolve("2026/note.json"), "no document");
    try (Records records = open(base.fresh(folder))) {
      Refreshed refreshed = records.refresh(bench.path(), bench.trust());

      assertThat(refreshed.added()).isEqualTo(1);
      assertThat(refreshed.keptOut()).hasSize(3);
      assertThat(refreshed.keptOut().toString())
          .contains("broken seal", "unknown key", "note.json");
      assertThat(records.tests("SP-1")).hasSize(1);
      assertThat(records.summary().keptOut().count()).isEqualTo(3);

      var both = TrustStore.of(bench.key().verifyingKey(), stranger.key().verifyingKey());
      assertThat(records.refresh(bench.path(), both).added()).isZero();
    }
  }

  @ParameterizedTest
  @EnumSource
  void aKeyThatIsTrustedLaterBringsItsDocumentsIn(Bases base) throws Exception {
    bench.test(1, "SP-1");
    bench.test(2, "SP-1");
    TrustStore nobody = TrustStore.of(SigningKey.generate().verifyingKey());
    try (Records records = open(base.fresh(folder))) {
      assertThat(records.refresh(bench.path(), nobody).added()).isZero();
      assertThat(records.refresh(bench.path(), bench.trust()).added()).isEqualTo(2);
      Refreshed distrusted = records.refresh(bench.path(), nobody);
      assertThat(distrusted.removed()).isEqualTo(2);
      assertThat(records.tests("SP-1")).isEmpty();
    }
  }

  @ParameterizedTest
  @EnumSource
  void aKeyThatWasNotNamedCostsNoIndex(Bases base) throws Exception {
    bench.test(1, "SP-1");
    try (Records records = open(base.fresh(folder))) {
      records.refresh(bench.path(), bench.trust());

      assertThatThrownBy(() -> records.refresh(bench.path(), TrustStore.of()))
          .isInstanceOf(RecordsException.class)
          .hasMessageContaining("no key is trusted")
          .hasMessageContaining("--key");
      assertThat(records.tests("SP-1")).hasSize(1);
    }
  }

  /** Neither a correction of its pump, nor one that takes a void back, makes it a monthly test. */
  @ParameterizedTest
  @EnumSource
  void aTestOfALeakSearchCountsNowhereWhateverBecomesOfIt(Bases base) throws Exception {
    ObjectNode document = BenchResults.document(1, "x");
    document.remove("asset");
    ((ObjectNode) document.get("test")).put("leakSearch", "SP-1");
    Path part = bench.test(document);
    RecordsAddress address = base.fresh(folder);
    try (Records records = open(address)) {
      bench.move(part, "SP-1");
      List<IndexedTest> moved = bench.tests(records, "SP-1");
      assertThat(moved).extracting(IndexedTest::counts).containsExactly(false);
      assertThat(moved.get(0).standing().voided()).contains("part of the leak search of SP-1");
      assertThat(records.assets()).isEmpty();
      assertThat(records.firstTest()).isEmpty();
      assertThat(records.lastVerdicts(Instant.parse("2099-01-01T00:00:00Z"))).isEmpty();

      bench.voided(part, true);
      assertThat(bench.tests(records, "SP-1").get(0).standing().voided()).contains("hose mixed up");
      bench.voided(part, false);
      assertThat(bench.tests(records, "SP-1"))
          .extracting(IndexedTest::counts)
          .containsExactly(false);
      List<String> grown = IndexDump.of(address);
      records.rebuild(List.of(bench.path()), bench.trust());
      assertThat(IndexDump.of(address)).isEqualTo(grown);
    }
  }

  @ParameterizedTest
  @EnumSource
  void aCorrectionCountsWheneverItCame(Bases base) throws Exception {
    Path first = bench.test(1, "SP-1");
    Path second = bench.test(2, "SP-1");
    RecordsAddress address = base.fresh(folder);
    try (Records records = open(address)) {
      assertThat(bench.tests(records, "SP-1")).hasSize(2);
      Path moved = bench.move(first, "SP-2");
      Path gone = bench.voided(second, true);

      assertThat(bench.tests(records, "SP-1"))
          .extracting(IndexedTest::counts)
          .containsExactly(false);
      assertThat(records.tests("SP-2")).extracting(IndexedTest::counts).containsExactly(true);
      assertThat(records.assets()).containsExactly("SP-2");
      assertThat(records.corrections("SP-2"))
          .extracting(c -> c.by().orElse("") + c.change().asset().orElse(""))
          .containsExactly("N. OseiSP-2");
      List<String> grown = IndexDump.of(address);

      // The other way round: the correction first.
      Path aside = folder.resolve("aside.json");
      Files.move(first, aside);
      records.refresh(bench.path(), bench.trust());
      assertThat(records.tests("SP-2")).isEmpty();
      Files.move(aside, first);
      records.refresh(bench.path(), bench.trust());
      assertThat(IndexDump.of(address)).isEqualTo(grown);

      bench.voided(second, false);
      assertThat(bench.tests(records, "SP-1"))
          .extracting(IndexedTest::counts)
          .containsExactly(true);
      assertThat(List.of(moved, gone)).allMatch(Files::exists);
    }
  }

  @ParameterizedTest
  @EnumSource
  void deletedFilesGoAndAPulledDiskDoesNotEmptyTheIndex(Bases base) throws Exception {
    Path first = bench.test(1, "SP-1");
    bench.test(2, "SP-1");
    try (Records records = open(base.fresh(folder))) {
      records.refresh(bench.path(), bench.trust());
      Files.delete(first);
      assertThat(records.refresh(bench.path(), bench.trust()).removed()).isEqualTo(1);
      assertThat(records.tests("SP-1")).hasSize(1);

      Files.move(bench.path(), folder.resolve("pulled"));
      Files.createDirectory(bench.path());
      assertThatThrownBy(() -> records.refresh(bench.path(), bench.trust()))
          .isInstanceOf(RecordsException.class)
          .hasMessageContaining("holds no results any more");
      assertThat(records.tests("SP-1")).hasSize(1);
    }
  }

  @ParameterizedTest
  @EnumSource
  void aRebuildTellsWhatWasExchangedOrIsGone(Bases base) throws Exception {
    Path first = bench.test(1, "SP-1");
    Path second = bench.test(2, "SP-1");
    Path third = bench.test(3, "SP-1");
    try (Records records = open(base.fresh(folder))) {
      records.refresh(bench.path(), bench.trust());
      BenchResults.tamper(first);
      Files.writeString(second, Files.readString(third));
      Refreshed rebuilt = records.rebuild(List.of(bench.path()), bench.trust());

      assertThat(rebuilt.remarks()).hasSize(2);
      assertThat(rebuilt.remarks().toString()).contains(first.toString(), second.toString());
      assertThat(rebuilt.keptOut()).hasSize(1);
      assertThat(records.tests("SP-1")).hasSize(1);
    }
  }

  @ParameterizedTest
  @EnumSource
  void worksAndCalibrationsAndVerdictsComeByTheirLast(Bases base) throws Exception {
    bench.inspection(1, "SP-1", "yearly-inspection", "2025-04-01");
    bench.inspection(2, "SP-1", "yearly-inspection", "2026-04-02");
    bench.inspection(3, "SP-1", "sterilisation", "2026-04-01");
    ObjectNode calibration = Json.object().put("kind", "calibration").put("due", "2027-01-05");
    calibration.put("id", "00000009-0000-8000-8000-000000000001");
    calibration.putObject("sensor").put("id", "TP-01");
    bench.document(calibration.put("calibratedAt", "2026-01-05T08:00:00.000Z"));
    bench.test(1, "SP-1");
    bench.test(2, "SP-1");
    try (Records records = open(base.fresh(folder))) {
      records.refresh(bench.path(), bench.trust());

      assertThat(records.lastWorks(LocalDate.of(2026, 4, 2)))
          .extracting(work -> work.work() + work.on())
          .containsExactly("sterilisation2026-04-01", "yearly-inspection2026-04-02");
      assertThat(records.lastWorks(LocalDate.of(2026, 4, 1)))
          .extracting(work -> work.work() + work.on())
          .containsExactly("sterilisation2026-04-01", "yearly-inspection2025-04-01");
      assertThat(records.works("SP-1")).hasSize(3);
      assertThat(records.calibrations(Optional.of("TP-01")))
          .extracting(IndexedCalibration::due)
          .containsExactly(Optional.of(LocalDate.of(2027, 1, 5)));
      assertThat(records.lastVerdicts(Instant.parse("2026-03-02T07:16:00Z"))).isEmpty();
      assertThat(records.lastVerdicts(Instant.parse("2026-03-02T07:17:00.001Z")))
          .extracting(LastVerdict::at)
          .containsExactly(Instant.parse("2026-03-02T07:17:00Z"));
      List<String> seen = new ArrayList<>();
      records.forEachTest(test -> seen.add(test.id().substring(0, 8)));
      assertThat(seen).containsExactly("00000001", "00000002");
      assertThat(records.summary().documents())
          .containsEntry("inspection", 3L)
          .containsEntry("calibration", 1L)
          .containsEntry("occlusion-test", 2L);
    }
  }

  /** What would break an index entry or a text column, if it were written as it came. */
  @ParameterizedTest
  @EnumSource
  void oddTextsNeitherBreakTheBaseNorStandInTheWayOfOthers(Bases base) throws Exception {
    bench.test(1, "SP\0-1");
    bench.test(2, "x".repeat(5000));
    bench.test(3, "O'Neill\"; DROP TABLE tests; --");
    bench.test(4, "\uD83D\uDE91 \u00E9");
    try (Records records = open(base.fresh(folder))) {
      Refreshed refreshed = records.refresh(bench.path(), bench.trust());

      assertThat(refreshed.added()).isEqualTo(3);
      assertThat(refreshed.keptOut()).hasSize(1);
      assertThat(records.assets())
          .containsExactlyInAnyOrder(
              "SP\uFFFD-1", "O'Neill\"; DROP TABLE tests; --", "\uD83D\uDE91 \u00E9");
    }
  }

  @Test
  void theFileInTheDirectoryIsTheDirectorysOwnWhereverItIsMoved() throws Exception {
    bench.test(1, "SP-1");
    try (Records records = Records.openIn(bench.path(), remark -> {})) {
      records.refresh(bench.path(), bench.trust());
    }
    Path moved = folder.resolve("moved");
    Files.move(bench.path(), moved);
    try (Records records = Records.openIn(moved, remark -> {})) {
      assertThat(records.refresh(moved, bench.trust()).added()).isZero();
      assertThat(records.tests("SP-1")).hasSize(1);
      assertThat(records.summary().directories()).containsExactly(".");
    }
  }
}
