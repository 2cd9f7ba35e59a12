package org.thumbseal.page;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import org.thumbseal.guided.GuidedSearch;
import org.thumbseal.guided.SealedSearch;
import org.thumbseal.guided.Stations;
import org.thumbseal.json.JsonGate;
import org.thumbseal.json.JsonRefusedException;
import org.thumbseal.seek.LeakRules;
import org.thumbseal.seek.SearchState;
import org.thumbseal.seek.StationTest;

/**
 * The search for the leak of one pump at one port. For any thread; it calls nobody, so that whoever
 * tells it something may hold locks of their own.
 */
final class PageSearch {
  private final SealedSearch.Said said;
  private final GuidedSearch guided;
  private final List<String> lines = new ArrayList<>();
  private final Map<String, Integer> underWay = new HashMap<>();
  private Standing standing = Standing.SEEKING;
  private @Nullable Integer again;
  private long step = 1;
  private boolean running;
  private SealedSearch.@Nullable Answer answer;
  private String trouble = "";

  /** Where it stands. */
  enum Standing {
    /** The next test at the port is one of its tests. */
    SEEKING,
    /** It rests; tests at the port are no business of it. */
    RESTING,
    /** It has its answer, which is not sealed yet. */
    UNSEALED,
    /** Its answer is sealed. */
    OVER
  }

  /** What there is to tell of it. */
  record Shown(
      SealedSearch.Said said, GuidedSearch guided, Progress progress, List<String> lines) {}

  /**
   * How far it is.
   *
   * @param standing where it stands
   * @param step counts its changes, so that who answers an older one can be told
   * @param aim the station of the next test, and whether it is one that was tested before
   * @param end what came out, and why it is not sealed
   */
  record Progress(Standing standing, long step, Aim aim, End end) {}

  /**
   * Where to block.
   *
   * @param station counted from 0; absent where the search has its answer
   * @param again whether a person wants it there once more
   * @param canGoBack whether an earlier station can be had once more
   * @param running whether the pump still runs after the last test
   */
  record Aim(Optional<Integer> station, boolean again, boolean canGoBack, boolean running) {}

  /** The answer, and what kept it from the disk; empty where nothing did. */
  record End(Optional<SealedSearch.Answer> answer, String trouble) {}

  /** Begins; the pump may be running. */
  PageSearch(SealedSearch.Said said, Stations stations, boolean running) {
    this.said = said;
    this.running = running;
    this.guided = new GuidedSearch(stations, said.litres(), lines::add);
  }

  String asset() {
    return said.asset();
  }

  SealedSearch.Said said() {
    return said;
  }

  SearchState state() {
    return guided.state();
  }

  synchronized Standing standing() {
    return standing;
  }

  synchronized boolean isAt(long seen) {
    return step == seen;
  }

  synchronized Shown shown() {
    Aim aim = new Aim(station(), again != null, earlier().isPresent(), running);
    End end = new End(Optional.ofNullable(answer), trouble);
    return new Shown(said, guided, new Progress(standing, step, aim, end), List.copyOf(lines));
  }

  private Optional<Integer> station() {
    return Optional.ofNullable(again).or(guided::station);
  }

  /** The station that was tested before the one that is aimed at, if it may be had once more. */
  private Optional<Integer> earlier() {
    List<StationTest> tests = guided.state().tests();
    List<Integer> back = new ArrayList<>();
    for (int i = tests.size() - 1; i >= 0; i--) {
      int at = tests.get(i).station();
      long had = tests.stream().filter(test -> test.station() == at).count();
      if (had < LeakRules.TESTS_A_STATION && !back.contains(at)) {
        back.add(at);
      }
    }
    int next = again == null ? 0 : back.indexOf(again) + 1;
    return next < back.size() ? Optional.of(back.get(next)) : Optional.empty();
  }

  /** Aims at an earlier station once more; whether there is one. */
  synchronized boolean back() {
    Optional<Integer> to = standing == Standing.SEEKING ? earlier() : Optional.empty();
    to.ifPresent(
        station -> {
          again = station;
          step++;
        });
    return to.isPresent();
  }

  /** Aims at the station again that the search asks for. */
  synchronized void forward() {
    again = null;
    step++;
  }

  synchronized void rest() {
    if (standing == Standing.SEEKING) {
      standing = Standing.RESTING;
      underWay.clear();
      step++;
    }
  }

  /** Goes on from a rest. */
  synchronized void goOn(boolean pumpRuns) {
    if (standing == Standing.RESTING) {
      standing = Standing.SEEKING;
      running = pumpRuns;
      step++;
    }
  }

  /** A test came to its end; it is of the station that was aimed at, whenever it is stored. */
  synchronized void graded(String id, boolean pumpRuns) {
    if (standing == Standing.SEEKING) {
      station().ifPresent(at -> underWay.put(id, at));
      running = pumpRuns;
    }
  }

  synchronized void isOff() {
    running = false;
  }

  /** Takes a test that was stored, if it is one of ours; whether the search has its answer now. */
  synchronized boolean stored(String id, Path file) {
    @Nullable Integer at = underWay.remove(id);
    if (at == null || standing != Standing.SEEKING) {
      return false;
    }
    take(at, file);
    step++;
    if (guided.conclusion().isPresent()) {
      standing = Standing.UNSEALED;
      return true;
    }
    return false;
  }

  private void take(int at, Path file) {
    try {
      if (guided.take(at, JsonGate.read(file), file)) {
        again = null;
      }
    } catch (JsonRefusedException | IllegalArgumentException e) {
      lines.add("this test does not count: " + e.getMessage());
    }
  }

  synchronized void sealed(SealedSearch.Answer sealed) {
    answer = sealed;
    trouble = "";
    standing = Standing.OVER;
    step++;
  }

  synchronized void notSealed(String why) {
    trouble = why;
    step++;
  }
}
