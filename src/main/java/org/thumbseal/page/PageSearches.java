package org.thumbseal.page;

import java.nio.file.Path;
import java.util.HashMap;
import java.util.Map;
import java.util.Optional;
import java.util.function.Consumer;
import org.thumbseal.archive.ArchiveException;
import org.thumbseal.daemon.BenchListener;
import org.thumbseal.daemon.PortDesk;
import org.thumbseal.daemon.StartRefusal;
import org.thumbseal.guided.SealedSearch;
import org.thumbseal.guided.Sealing;
import org.thumbseal.guided.Stations;
import org.thumbseal.link.HostClock;
import org.thumbseal.page.PageSearch.Standing;
import org.thumbseal.phase.Phase;
import org.thumbseal.phase.PhaseEvent;
import org.thumbseal.record.ResultDocument;

/**
 * The leak searches of a bench, one at a port at most. They live as long as the program: the tests
 * are sealed one by one, so that what a kill takes is the order they were made in.
 */
final class PageSearches implements BenchListener {
  private final LiveBench bench;
  private final Map<String, PortDesk> desks;
  private final Sealing sealing;
  private final Stations stations;
  private final HostClock clock;
  private final Map<String, PageSearch> byPort = new HashMap<>();
  private final Map<String, Phase> phases = new HashMap<>();

  PageSearches(PageServer.Served served) {
    this.bench = served.bench();
    this.desks = Map.copyOf(served.desks());
    this.sealing = served.setting().sealing();
    this.stations = served.setting().stations();
    this.clock = served.clock();
  }

  private synchronized Optional<PageSearch> at(String port) {
    return Optional.ofNullable(byPort.get(port));
  }

  private synchronized boolean pumpRuns(String port) {
    return phases.getOrDefault(port, Phase.IDLE) != Phase.IDLE;
  }

  private void show(String port) {
    bench.search(port, at(port).map(search -> SearchTree.of(search.shown())));
  }

  /** The search that a page means, as it knows it: another window may have been quicker. */
  private PageSearch known(String port, long step) throws Refusal {
    return at(port).filter(search -> search.isAt(step)).orElseThrow(PageSearches::moved);
  }

  private static Refusal moved() {
    return new Refusal(
        409, "search-moved", "the search has gone on meanwhile, in another window or by a test");
  }

  private static void require(Optional<StartRefusal> refusal) throws Refusal {
    if (refusal.isPresent()) {
      throw new Refusal(409, refusal.get().code(), refusal.get().text());
    }
  }

  /**
   * Begins; one that is over, or that nobody wants any more, gives way, one that goes on does not.
   */
  void begin(PortDesk desk, String asset) throws Refusal {
    if (at(desk.port()).filter(s -> s.standing() != Standing.OVER).isPresent()) {
      throw moved();
    }
    require(desk.seek(Optional.of(asset)));
    SealedSearch.Said said = new SealedSearch.Said(asset, Optional.empty(), bench.jarLitres(asset));
    PageSearch begun = new PageSearch(said, stations, pumpRuns(desk.port()));
    synchronized (this) {
      byPort.put(desk.port(), begun);
    }
    show(desk.port());
  }

  void back(PortDesk desk, long step) throws Refusal {
    if (!known(desk.port(), step).back()) {
      throw new Refusal(
          409,
          "no-further-back",
          "no earlier place can be tested again; each counts twice at most");
    }
    show(desk.port());
  }

  void forward(PortDesk desk, long step) throws Refusal {
    known(desk.port(), step).forward();
    show(desk.port());
  }

  void rest(PortDesk desk, long step) throws Refusal {
    known(desk.port(), step);
    giveWay(desk);
  }

  /** Lets a search rest, for the tests at the port are to be those of a pump again. */
  void giveWay(PortDesk desk) throws Refusal {
    Optional<PageSearch> search = at(desk.port());
    Standing standing = search.map(PageSearch::standing).orElse(Standing.RESTING);
    if (standing == Standing.SEEKING) {
      require(desk.seek(Optional.empty()));
      search.ifPresent(PageSearch::rest);
      show(desk.port());
    } else if (standing != Standing.RESTING) {
      desk.seek(Optional.empty());
    }
  }

  void goOn(PortDesk desk, long step) throws Refusal {
    PageSearch search = known(desk.port(), step);
    if (search.standing() != Standing.RESTING) {
      throw moved();
    }
    require(desk.seek(Optional.of(search.asset())));
    search.goOn(pumpRuns(desk.port()));
    show(desk.port());
  }

  /** Puts a search away. Its tests are sealed, and its answer where it has one. */
  void end(PortDesk desk, long step) throws Refusal {
    known(desk.port(), step);
    giveWay(desk);
    synchronized (this) {
      byPort.remove(desk.port());
    }
    show(desk.port());
  }

  /** Tries once more to seal the answer. */
  void seal(PortDesk desk, long step) throws Refusal {
    PageSearch search = known(desk.port(), step);
    if (search.standing() != Standing.UNSEALED) {
      throw moved();
    }
    seal(search);
    show(desk.port());
  }

  private void seal(PageSearch search) {
    try {
      search.sealed(new SealedSearch(search.said(), clock).seal(search.state(), sealing));
    } catch (ArchiveException e) {
      search.notSealed(String.valueOf(e.getMessage()));
    }
  }

  @Override
  public void graded(String port, ResultDocument result) {
    // One that bears the name of a pump is that pump's own.
    if (result.asset().isEmpty()) {
      graded(port, result.id());
    }
  }

  void graded(String port, String id) {
    change(port, search -> search.graded(id, pumpRuns(port)));
  }

  @Override
  public void result(String port, ResultDocument result, Path file) {
    stored(port, result.id(), file);
  }

  void stored(String port, String id, Path file) {
    change(
        port,
        search -> {
          if (search.stored(id, file)) {
            seal(search);
            release(port);
          }
        });
  }

  /** The desk is busy with this very test, so somebody else waits for it. */
  private void release(String port) {
    Optional.ofNullable(desks.get(port))
        .ifPresent(
            desk -> {
              Thread later = new Thread(() -> desk.seek(Optional.empty()), "search over");
              later.setDaemon(true);
              later.start();
            });
  }

  @Override
  public void phase(String port, PhaseEvent.Entered entered) {
    synchronized (this) {
      phases.put(port, entered.phase());
    }
    if (entered.phase() == Phase.IDLE) {
      change(port, PageSearch::isOff);
    }
  }

  @Override
  public void closed(String port) {
    synchronized (this) {
      phases.remove(port);
    }
    change(port, PageSearch::isOff);
  }

  private void change(String port, Consumer<PageSearch> by) {
    Optional<PageSearch> search = at(port);
    search.ifPresent(by);
    search.ifPresent(known -> show(port));
  }

  @Override
  public void waiting(String port, ResultDocument result) {}

  @Override
  public void notice(String text) {}
}
