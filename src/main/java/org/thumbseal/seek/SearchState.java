package org.thumbseal.seek;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.NavigableMap;
import java.util.Optional;
import java.util.TreeMap;
import org.thumbseal.quantity.Quantity;

/**
 * How far a search has come. Of two tests at one station the later one counts.
 *
 * <p>At its maximum the pump takes away what leaks in: S0 (p - p_ult) = Q, Q all that gets in
 * between station and pump (a reciprocating pump limited by its dead volume, derived; choked leak).
 * Two stations of one pump differ by Q/S0 of the sections between them, p_ult and what is common to
 * both tests being the same, so what each section lets in follows from a difference of two
 * plateaus.
 *
 * @param path the stations
 * @param tests in the order in which they were made
 */
public record SearchState(SuctionPath path, List<StationTest> tests) {
  /** Keeps a copy of the tests, and refuses more of a station than the false alarms allow. */
  public SearchState {
    tests = List.copyOf(tests);
    for (int at = 0; at < path.size(); at++) {
      if (Collections.frequency(tests.stream().map(StationTest::station).toList(), at)
          > LeakRules.TESTS_A_STATION) {
        throw new IllegalArgumentException(
            "a station counts with "
                + LeakRules.TESTS_A_STATION
                + " tests at most: "
                + path.station(at));
      }
    }
  }

  /** The beginning. */
  public static SearchState of(SuctionPath path) {
    return new SearchState(path, List.of());
  }

  /** With one test more. */
  public SearchState with(StationTest test) {
    List<StationTest> all = new ArrayList<>(tests);
    all.add(test);
    return new SearchState(path, all);
  }

  /** What to do next. */
  public Step next() {
    return new Advice(this).next();
  }

  /** The tests that count, by station from the patient end. */
  public NavigableMap<Integer, StationTest> byStation() {
    NavigableMap<Integer, StationTest> last = new TreeMap<>();
    tests.forEach(test -> last.put(test.station(), test));
    return last;
  }

  /** What lies between neighbours of those that were tested, from the patient end. */
  public List<Span> spans() {
    List<StationTest> tested = List.copyOf(byStation().values());
    List<Span> spans = new ArrayList<>();
    for (int i = 1; i < tested.size(); i++) {
      spans.add(between(tested.get(i - 1), tested.get(i)));
    }
    return spans;
  }

  private static Span between(StationTest outer, StationTest inner) {
    Quantity lost = Combination.difference(inner.vacuum().level(), outer.vacuum().level());
    return new Span(outer.station(), inner.station(), lost);
  }

  /** Sections that no two tests enclose, by number; the pump is not among them. */
  public List<Integer> notLookedAt() {
    List<Integer> outside = new ArrayList<>();
    NavigableMap<Integer, StationTest> tested = byStation();
    for (int at = 0; at < path.last(); at++) {
      boolean enclosed = tested.floorKey(at) != null && tested.higherKey(at) != null;
      if (!enclosed && !isTight(at)) {
        outside.add(at);
      }
    }
    return outside;
  }

  /** Ambient pressure, kPa. */
  public double ambient() {
    return tests.get(tests.size() - 1).air().ambient();
  }

  /** How many standard uncertainties a loss has to stand off. */
  public double factor() {
    return LeakRules.factor(path.size());
  }

  /**
   * The pumping speed, L/min, of the innermost test that has one: the volume there is nearest to
   * that of the jar alone. Without the jar none has.
   */
  public Optional<Quantity> speed() {
    return byStation().descendingMap().values().stream()
        .flatMap(test -> test.air().speed().stream())
        .filter(speed -> speed.value() > 0)
        .findFirst();
  }

  /**
   * Whether a section lies behind a station from which on a decay let in less than what counts: the
   * leak is then no larger, even where it is an upper bound.
   */
  boolean isTight(int section) {
    return byStation().headMap(section, true).values().stream().anyMatch(this::decayIsTight);
  }

  private boolean decayIsTight(StationTest test) {
    double least = 1_000 * LeakRules.LEAST_SHARE * speed().map(Quantity::value).orElse(0.0);
    return test.air()
        .decay()
        .map(StationTest.Decay::leak)
        .filter(leak -> leak.value() + factor() * leak.standardUncertainty() <= least)
        .isPresent();
  }
}
