package org.thumbseal.seek;

import java.util.Locale;
import org.thumbseal.seek.Conclusion.Verdict;

/**
 * How often a search names the section that leaks. Arguments: searches for each section (default
 * 500), first seed (default 1), samples a second (default 50, which takes the least time). Prints a
 * table, a row for a leak in each section, for none, and for none at a worn pump.
 */
final class LeakSearchStudy {
  private final int searches;
  private final long seed;
  private final double hertz;

  private LeakSearchStudy(int searches, long seed, double hertz) {
    this.searches = searches;
    this.seed = seed;
    this.hertz = hertz;
  }

  public static void main(String[] args) {
    int searches = args.length > 0 ? Integer.parseInt(args[0]) : 500;
    long seed = args.length > 1 ? Long.parseLong(args[1]) : 1;
    double hertz = args.length > 2 ? Double.parseDouble(args[2]) : 50;
    new LeakSearchStudy(searches, seed, hertz).print();
  }

  private void print() {
    System.out.println("leak in | right | wrong | none | unfinished | tests | within U");
    for (int leaking = 0; leaking < SuctionPath.USUAL.last(); leaking++) {
      row(SuctionPath.USUAL.section(leaking), leaking);
    }
    row("nowhere", SimulatedSearch.NONE);
    row("nowhere, pump worn", SimulatedSearch.WORN_PUMP);
  }

  private void row(String name, int leaking) {
    Tally tally = new Tally(leaking);
    for (int i = 0; i < searches; i++) {
      SimulatedSearch search = new SimulatedSearch(leaking, seed + i, hertz);
      tally.add(search.run(), search.leak());
    }
    System.out.println(name + " | " + tally.row(searches));
    System.out.println("  " + tally.verdicts);
  }

  /** Counts of one row. */
  static final class Tally {
    private final int leaking;
    private final java.util.Map<Verdict, Integer> verdicts = new java.util.EnumMap<>(Verdict.class);
    private int right;
    private int wrong;
    private int none;
    private int unfinished;
    private int tests;
    private int covered;
    private int measured;

    Tally(int leaking) {
      this.leaking = leaking;
    }

    int right() {
      return right;
    }

    int wrong() {
      return wrong;
    }

    void add(SearchState state, double leak) {
      tests += state.tests().size();
      if (!(state.next() instanceof Step.Stop stop)) {
        unfinished++;
        return;
      }
      Conclusion found = stop.conclusion();
      verdicts.merge(found.verdict(), 1, Integer::sum);
      if (found.leaking().isEmpty()) {
        none++;
      } else if (found.leaking().get(0).from() == leaking) {
        right++;
        cover(state, leak);
      } else {
        wrong++;
      }
    }

    private void cover(SearchState state, double leak) {
      for (SectionLeak section : Intake.of(state)) {
        if (section.span().from() == leaking && section.leak().isPresent()) {
          measured++;
          double error = Math.abs(section.leak().get().value() - 1_000 * leak);
          covered += error <= section.leak().get().expandedUncertainty() ? 1 : 0;
        }
      }
    }

    String row(int searches) {
      return String.format(
          Locale.ROOT,
          "%d | %d | %d | %d | %.2f | %d of %d",
          right,
          wrong,
          none,
          unfinished,
          (double) tests / searches,
          covered,
          measured);
    }
  }
}
