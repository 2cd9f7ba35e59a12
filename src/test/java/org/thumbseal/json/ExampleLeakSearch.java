package org.thumbseal.json;

import java.time.Instant;
import java.util.Optional;
import org.thumbseal.quantity.Quantity;
import org.thumbseal.seek.Conclusion;
import org.thumbseal.seek.LeakSearch;
import org.thumbseal.seek.Level;
import org.thumbseal.seek.SearchState;
import org.thumbseal.seek.StationTest;
import org.thumbseal.seek.Step;
import org.thumbseal.seek.SuctionPath;

/** A leak search with everything that one can have. */
public final class ExampleLeakSearch {
  private ExampleLeakSearch() {}

  /** Invented: the jar takes 16 kPa. */
  public static LeakSearch complete() {
    SearchState state = SearchState.of(SuctionPath.USUAL).with(test(1, 72)).with(test(2, 88));
    return new LeakSearch(
        "6a1f0c52-8d3e-8b71-9c44-2f60aa10bb02",
        new LeakSearch.About("SP-014", Optional.of("M. Otieno"), Optional.of(2.0)),
        state,
        conclusion(state),
        Instant.parse("2026-03-02T08:30:00.250Z"));
  }

  private static Conclusion conclusion(SearchState state) {
    if (state.next() instanceof Step.Stop stop) {
      return stop.conclusion();
    }
    throw new AssertionError("the search goes on");
  }

  private static StationTest test(int station, double kilopascals) {
    Quantity speed = new Quantity(28, "L/min", 0.5);
    boolean jar = SuctionPath.USUAL.hasJar(station);
    return new StationTest(
        station,
        new StationTest.Source(
            "6a1f0c52-8d3e-8b71-9c44-2f60aa10bb1" + station, "a".repeat(64), "x.json"),
        new StationTest.Vacuum(
            new Level(kilopascals, 0.02, new Level.Scale("tp-01", 0.003)),
            Quantity.kilopascals(kilopascals, 0.25),
            80),
        new StationTest.Air(
            101.325, jar ? Optional.of(speed) : Optional.empty(), Optional.empty()));
  }
}
