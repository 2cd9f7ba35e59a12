package org.thumbseal.history;

import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Random;
import java.util.function.IntToDoubleFunction;
import org.thumbseal.care.CaredFor;
import org.thumbseal.care.Deed;
import org.thumbseal.care.Due;
import org.thumbseal.care.Dues;
import org.thumbseal.care.Work;

/** Monthly tests of a drawn pump: rise time as told, the maximum with it, scatter of 2 %. */
public final class DrawnHistory {
  /** Of all drawn histories. */
  public static final Instant TODAY = Instant.parse("2026-11-20T12:00:00Z");

  private static final Duration MONTH = Duration.ofHours(730);

  private final Random random;
  private final List<PastTest> tests = new ArrayList<>();

  /** Nothing yet. */
  public DrawnHistory(long seed) {
    random = new Random(seed);
  }

  /**
   * So many months of tests up to today.
   *
   * @param rise rise time of the month, counted from 0, s
   */
  public DrawnHistory months(int count, IntToDoubleFunction rise) {
    for (int month = 0; month < count; month++) {
      Instant at = TODAY.minus(MONTH.multipliedBy(count - 1L - month)).minus(Duration.ofDays(3));
      test(at, rise.applyAsDouble(month) * (1 + 0.02 * random.nextGaussian()), List.of());
    }
    return this;
  }

  /** A test before which parts were replaced. */
  public DrawnHistory test(Instant at, double rise, List<String> replaced) {
    double maximum = 97 - 1.3 * rise + 0.6 * random.nextGaussian();
    Map<Kind, PastTest.Value> values = new EnumMap<>(Kind.class);
    values.put(Kind.RISE_TIME, new PastTest.Value(rise, 0.03 * rise));
    values.put(Kind.MAXIMUM, new PastTest.Value(maximum, 0.6));
    values.put(Kind.SPEED, new PastTest.Value(170 / rise, 5 / rise));
    String verdict =
        rise - 0.03 * rise > 10 || maximum + 0.6 < 80
            ? "fail"
            : rise + 0.03 * rise > 10 || maximum - 0.6 < 80 ? "inconclusive" : "pass";
    PastTest.Setting setting =
        new PastTest.Setting(
            "tp-01, cal-7",
            Optional.of(2.0),
            replaced,
            Map.of(Kind.RISE_TIME, 10.0, Kind.MAXIMUM, 80.0));
    PastTest.Outcome outcome =
        new PastTest.Outcome(verdict, Optional.empty(), Optional.empty(), false);
    tests.add(new PastTest("t" + tests.size(), Optional.of(at), outcome, setting, values));
    return this;
  }

  /** Says of one test that parts were replaced before it. */
  public DrawnHistory replaced(int month, String... parts) {
    PastTest old = tests.get(month);
    PastTest.Setting was = old.setting();
    return put(
        month,
        old.outcome(),
        new PastTest.Setting(was.sensor(), was.jar(), List.of(parts), was.limits()));
  }

  /** Says of one test that it does not count. */
  public DrawnHistory voided(int month, String why) {
    return put(
        month,
        new PastTest.Outcome("pass", Optional.of(why), Optional.empty(), true),
        tests.get(month).setting());
  }

  /** Says of one test that it could not be judged. */
  public DrawnHistory invalid(int month) {
    return put(
        month,
        new PastTest.Outcome("invalid", Optional.empty(), Optional.of("thumb slipped"), true),
        tests.get(month).setting());
  }

  private DrawnHistory put(int month, PastTest.Outcome outcome, PastTest.Setting setting) {
    PastTest old = tests.get(month);
    tests.set(month, new PastTest(old.id(), old.at(), outcome, setting, old.values()));
    return this;
  }

  /** Takes away the last tests. */
  public DrawnHistory without(int last) {
    tests.subList(tests.size() - last, tests.size()).clear();
    return this;
  }

  /** The monthly test of it, by the days of its tests. */
  public static List<Due> dues(History history) {
    List<Deed> deeds =
        history.tests().stream()
            .filter(PastTest::judges)
            .map(test -> deed(history.pump().id(), test))
            .toList();
    LocalDate today = LocalDate.ofInstant(TODAY, ZoneOffset.UTC);
    return Dues.of(List.of(CaredFor.known(history.pump().id())), deeds, today).stream()
        .filter(due -> due.work() == Work.OCCLUSION_TEST)
        .toList();
  }

  private static Deed deed(String asset, PastTest test) {
    LocalDate day = LocalDate.ofInstant(test.at().orElseThrow(), ZoneOffset.UTC);
    return new Deed(asset, Work.OCCLUSION_TEST, day, Deed.Outcome.IN_ORDER);
  }

  /** The history of a pump of the district hospital of the examples. */
  public History of(String id, String what, String where) {
    Pump pump = new Pump(id, Optional.of(what), Optional.of(where), true);
    return History.of(pump, tests, TODAY);
  }
}
