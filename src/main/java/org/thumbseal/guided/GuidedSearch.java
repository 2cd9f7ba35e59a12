package org.thumbseal.guided;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.Consumer;
import org.thumbseal.json.JsonRefusedException;
import org.thumbseal.json.Printable;
import org.thumbseal.json.StationTestReader;
import org.thumbseal.json.StationTestReader.Place;
import org.thumbseal.seal.Seal;
import org.thumbseal.seek.Conclusion;
import org.thumbseal.seek.SearchState;
import org.thumbseal.seek.SearchWords;
import org.thumbseal.seek.StationTest;
import org.thumbseal.seek.Step;
import tools.jackson.databind.node.ObjectNode;

/**
 * A search under way: takes one sealed result after the other, tells what it says and where to
 * block next. For any thread.
 */
public final class GuidedSearch {
  private final Consumer<String> say;
  private final Optional<Double> litres;
  private final List<String> taken = new ArrayList<>();
  private final String where;
  private SearchState state;

  /**
   * A search that has no test yet.
   *
   * @param litres volume of the jar, L, for tests that do not name it
   * @param say is told what to say, a line each
   */
  public GuidedSearch(Stations stations, Optional<Double> litres, Consumer<String> say) {
    this.state = SearchState.of(stations.path());
    this.where = stations.file().map(f -> " --stations " + Printable.word(f.toString())).orElse("");
    this.litres = litres;
    this.say = say;
  }

  /** The station that is to be blocked next; empty when the search is over. */
  public synchronized Optional<Integer> station() {
    return state.next() instanceof Step.Block block
        ? Optional.of(block.station())
        : Optional.empty();
  }

  /** What was found; empty while the search goes on. */
  public synchronized Optional<Conclusion> conclusion() {
    return state.next() instanceof Step.Stop stop
        ? Optional.of(stop.conclusion())
        : Optional.empty();
  }

  /** The tests that count so far. */
  public synchronized SearchState state() {
    return state;
  }

  /** Says where to block, as long as the search goes on. */
  public synchronized void advise() {
    station().ifPresent(at -> say.accept("next: " + new SearchWords(state).block(at)));
  }

  /**
   * Takes the result of a test and says what it tells.
   *
   * @return whether it counts
   * @throws IllegalArgumentException if the station has had its tests
   */
  public synchronized boolean take(int station, ObjectNode result, Path file) {
    try {
      var place = new Place(station, state.path().hasJar(station), litres);
      state = state.with(StationTestReader.read(result, source(result, file), place));
      taken.add(" --from " + Printable.word((station + 1) + "=" + file));
      say.accept(new SearchWords(state).told());
      return true;
    } catch (JsonRefusedException e) {
      say.accept(
          "this test does not count: it "
              + e.getMessage()
              + "; test again at "
              + state.path().station(station));
      return false;
    }
  }

  private static StationTest.Source source(ObjectNode result, Path file) {
    return new StationTest.Source(
        result.path("id").asString(""), Seal.digest(result), file.getFileName().toString());
  }

  /** The options by which what was tested is taken up again; empty where nothing counts yet. */
  public synchronized String resumed() {
    return taken.isEmpty() ? "" : String.join("", taken) + where;
  }
}
