package org.thumbseal.simulate;

import java.util.ArrayList;
import java.util.List;
import org.thumbseal.simulate.Act.Connect;
import org.thumbseal.simulate.Act.SetInlet;

/** Plays a script on the plant alone and notes what each test really was. */
final class TruthFinder {
  private static final double OPEN_SECONDS = 2;

  private final Script script;
  private final Bench bench;
  private final List<TestTruth> found = new ArrayList<>();

  private TruthFinder(Scenario scenario) {
    this.script = scenario.script();
    this.bench = new Bench(scenario.plant(), script);
  }

  static List<TestTruth> of(Scenario scenario) {
    TruthFinder finder = new TruthFinder(scenario);
    List<Step> hands = finder.script.steps().stream().filter(TruthFinder::atInlet).toList();
    int next = 0;
    while (next < hands.size()) {
      next = isBlocking(hands.get(next)) ? finder.test(hands, next) : next + 1;
    }
    return List.copyOf(finder.found);
  }

  private static boolean atInlet(Step step) {
    return step.act() instanceof SetInlet || step.act() instanceof Connect;
  }

  private static boolean isBlocking(Step step) {
    return step.act() instanceof SetInlet inlet && inlet.opening() == 0;
  }

  private static boolean isEnding(Step step) {
    return step.act() instanceof Connect
        || (step.act() instanceof SetInlet inlet && inlet.opening() == 1);
  }

  /** Notes the test that begins at an index and returns the index of the act that ends it. */
  private int test(List<Step> hands, int first) {
    int last = first + 1;
    while (last < hands.size() && !isEnding(hands.get(last))) {
      last++;
    }
    double start = hands.get(first).seconds();
    double end = last < hands.size() ? hands.get(last).seconds() : script.end();
    Climb climb = new Climb(bench, start, open(start));
    climb.until(end);
    found.add(climb.truth(last > first + 1));
    return last;
  }

  /** Mean vacuum of the open phase before a time, Pa. */
  private double open(double until) {
    double from = Math.max(until - OPEN_SECONDS, lastActBefore(until));
    int points = (int) Math.floor((until - from) / Climb.GRID_SECONDS);
    double sum = 0;
    for (int i = points; i >= 1; i--) {
      bench.advance(until - i * Climb.GRID_SECONDS);
      sum += bench.vacuum();
    }
    bench.advance(until);
    return points == 0 ? bench.vacuum() : sum / points;
  }

  private double lastActBefore(double until) {
    return script.steps().stream()
        .filter(s -> Bench.concerns(s.act()))
        .mapToDouble(Step::seconds)
        .filter(s -> s < until)
        .max()
        .orElse(until);
  }
}
