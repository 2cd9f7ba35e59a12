package org.thumbseal.cli;

import java.util.Arrays;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.thumbseal.care.Work;
import org.thumbseal.history.Kind;
import org.thumbseal.history.PastTest;
import org.thumbseal.history.PastTest.Outcome;
import org.thumbseal.history.PastTest.Setting;
import org.thumbseal.history.PastTest.Value;
import org.thumbseal.index.IndexedCorrection;
import org.thumbseal.index.IndexedTest;
import org.thumbseal.index.IndexedTest.IndexedCheck;
import org.thumbseal.index.Records;
import org.thumbseal.index.RecordsException;
import org.thumbseal.record.Standing;

/** The tests of a pump out of the index, as its history takes them. */
final class PastTests {
  private static final String UNKNOWN = "unknown";
  private static final List<String> QUANTITIES =
      Arrays.stream(Kind.values()).map(Kind::member).toList();

  private PastTests() {}

  static List<PastTest> of(Records records, String asset) throws RecordsException {
    Set<String> corrected =
        records.corrections(asset).stream()
            .map(IndexedCorrection::result)
            .collect(Collectors.toSet());
    List<IndexedTest> tests = records.tests(asset, QUANTITIES);
    Set<String> repaired = new Repairs(records.works(asset)).testedAfter(tests);
    return tests.stream()
        .map(
            test ->
                of(
                    test,
                    corrected.contains(test.id()),
                    repaired.contains(test.id()) ? List.of(Work.REPAIR.code()) : List.of()))
        .toList();
  }

  private static PastTest of(IndexedTest test, boolean corrected, List<String> repair) {
    Standing standing = test.standing();
    return new PastTest(
        test.id(),
        test.startedAt(),
        new Outcome(test.verdict(), standing.voided(), standing.note(), corrected),
        setting(test, repair),
        values(test));
  }

  private static Setting setting(IndexedTest test, List<String> repair) {
    IndexedTest.Conditions conditions = test.conditions();
    String sensor =
        conditions.sensor().orElse(UNKNOWN) + ", " + conditions.calibration().orElse(UNKNOWN);
    Stream<String> parts =
        test.details().checks().stream()
            .filter(check -> check.state().equals("replaced"))
            .map(PastTests::part);
    List<String> replaced = Stream.concat(repair.stream(), parts).toList();
    return new Setting(sensor, conditions.jar(), replaced, limits(conditions.limits()));
  }

  private static String part(IndexedCheck check) {
    return check.item() + check.part().map(part -> " (" + part + ")").orElse("");
  }

  private static Map<Kind, Double> limits(IndexedTest.Limits applied) {
    Map<Kind, Double> limits = new EnumMap<>(Kind.class);
    applied.riseTime().ifPresent(seconds -> limits.put(Kind.RISE_TIME, seconds));
    applied.maximum().ifPresent(kilopascals -> limits.put(Kind.MAXIMUM, kilopascals));
    return limits;
  }

  private static Map<Kind, Value> values(IndexedTest test) {
    Map<Kind, Value> values = new EnumMap<>(Kind.class);
    for (Kind kind : Kind.values()) {
      test.quantity(kind.member())
          .filter(q -> q.unit().equals(kind.unit()) && q.bound().isEmpty())
          .ifPresent(q -> values.put(kind, new Value(q.value(), q.expanded().orElse(0.0))));
    }
    return values;
  }
}
