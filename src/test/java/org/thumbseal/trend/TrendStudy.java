package org.thumbseal.trend;

import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Random;

/** Prints what the trend would have said of a drawn fleet, against what then came. */
final class TrendStudy {
  /** How the 60 pumps of one fleet are made up. */
  private static final Map<Wear, Integer> FLEET =
      Map.of(
          Wear.NONE,
          20,
          Wear.NEAR_LIMIT,
          6,
          Wear.SLOW,
          10,
          Wear.FAST,
          6,
          Wear.GROWING_LEAK,
          6,
          Wear.SUDDEN_LEAK,
          4,
          Wear.CLOGGING,
          4,
          Wear.OTHER_JAR,
          4);

  /** Months within which a named pump is said to be in danger. */
  static final int SOON = 3;

  private TrendStudy() {}

  /** Arguments: number of fleets, seed, spread of the gain; then the confidence of a trend. */
  public static void main(String[] arguments) {
    int fleets = arguments.length > 0 ? Integer.parseInt(arguments[0]) : 10;
    long seed = arguments.length > 1 ? Long.parseLong(arguments[1]) : 1;
    double spread = arguments.length > 2 ? Double.parseDouble(arguments[2]) : 0.005;
    TrendRules usual = TrendRules.USUAL;
    TrendRules rules =
        new TrendRules(
            arguments.length > 3 ? Double.parseDouble(arguments[3]) : usual.confidence(),
            usual.leastTests(),
            usual.leastDays(),
            usual.horizonDays());
    print(tallies(fleets, seed, spread, rules), fleets);
  }

  static Map<Wear, Tally> tallies(int fleets, long seed, double spread, TrendRules rules) {
    Random random = new Random(seed);
    Map<Wear, Tally> tallies = new EnumMap<>(Wear.class);
    for (int fleet = 0; fleet < fleets; fleet++) {
      for (DrawnLife life : fleet(random, spread)) {
        tallies.computeIfAbsent(life.pump().wear(), w -> new Tally()).take(life, rules);
      }
    }
    return tallies;
  }

  private static List<DrawnLife> fleet(Random random, double spread) {
    List<DrawnLife> lives = new ArrayList<>();
    for (Wear wear : Wear.values()) {
      for (int i = 0; i < FLEET.getOrDefault(wear, 0); i++) {
        lives.add(new DrawnLife(new DrawnPump(wear, random), random, spread));
      }
    }
    return lives;
  }

  /** Counts over pumps and tests of one kind. */
  static final class Tally {
    int pumps;
    int tests;
    int failures;
    int failuresNamed;
    int failuresNamedSoon;
    int soon;
    int soonRight;
    int soonRightInSix;
    int named;
    int namedNever;
    int pumpsNamedNever;

    void take(DrawnLife life, TrendRules rules) {
      pumps++;
      int wrong = namedNever;
      boolean[] anyNamed = new boolean[DrawnLife.MONTHS];
      boolean[] anySoon = new boolean[DrawnLife.MONTHS];
      for (int month = 0; month < DrawnLife.MONTHS; month++) {
        if (life.failed(month)) {
          failure(month, anyNamed, anySoon);
        } else {
          tests++;
          judge(life, month, rules, anyNamed, anySoon);
        }
      }
      pumpsNamedNever += namedNever > wrong ? 1 : 0;
    }

    private void failure(int month, boolean[] anyNamed, boolean[] anySoon) {
      failures++;
      boolean said = false;
      boolean saidSoon = false;
      for (int before = Math.max(0, month - SOON); before < month; before++) {
        said |= anyNamed[before];
        saidSoon |= anySoon[before];
      }
      failuresNamed += said ? 1 : 0;
      failuresNamedSoon += saidSoon ? 1 : 0;
    }

    private void judge(
        DrawnLife life, int month, TrendRules rules, boolean[] anyNamed, boolean[] anySoon) {
      List<Crossing> crossings = life.named(month, rules);
      double today = month * DrawnLife.MONTH;
      anyNamed[month] = !crossings.isEmpty();
      anySoon[month] =
          crossings.stream().anyMatch(c -> c.earliest() - today <= SOON * DrawnLife.MONTH);
      if (anySoon[month]) {
        soon++;
        soonRight += life.failsWithin(month, SOON) ? 1 : 0;
        soonRightInSix += life.failsWithin(month, 2 * SOON) ? 1 : 0;
      }
      if (anyNamed[month]) {
        named++;
        namedNever += life.failsWithin(month, 36) ? 0 : 1;
      }
    }
  }

  private static void print(Map<Wear, Tally> tallies, int fleets) {
    System.out.printf(
        Locale.ROOT,
        "%d fleets of 60 pumps; per kind: pumps, good tests, failures, named in the 3 months before,"
            + " with earliest <= 3 months; tests with a date, of these pump never fails (36 months),"
            + " pumps so named; tests with earliest <= 3 months, failed within 3, within 6%n",
        fleets);
    tallies.forEach(
        (wear, t) ->
            System.out.printf(
                Locale.ROOT,
                "%-13s %5d %6d | %5d %5d %5d | %5d %5d %4d | %5d %5d %5d%n",
                wear,
                t.pumps,
                t.tests,
                t.failures,
                t.failuresNamed,
                t.failuresNamedSoon,
                t.named,
                t.namedNever,
                t.pumpsNamedNever,
                t.soon,
                t.soonRight,
                t.soonRightInSix));
  }
}
