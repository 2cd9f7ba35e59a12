package org.thumbseal.cli;

import java.io.PrintWriter;
import java.nio.file.Path;
import java.util.Optional;
import org.thumbseal.guided.GuidedSearch;
import org.thumbseal.json.JsonGate;
import org.thumbseal.json.JsonRefusedException;
import org.thumbseal.phase.Phase;
import org.thumbseal.record.ResultDocument;

/**
 * Hands the results of a port to a search, and stops the port when the search is over. The verdict
 * is not shown: at other stations than the jar inlet it says nothing about the pump.
 */
final class LiveSearch extends BenchPrinter {
  private final GuidedSearch search;
  private volatile Runnable stop = () -> {};

  LiveSearch(GuidedSearch search, PrintWriter out, PrintWriter err) {
    super(out, err);
    this.search = search;
  }

  /** Says what is to be called when the search is over. */
  void whenOver(Runnable over) {
    stop = over;
  }

  @Override
  String whatNow(Phase phase) {
    Optional<Integer> station = search.station();
    return phase == Phase.OPEN && station.isPresent()
        ? "pump running: after 5 s block at the "
            + search.state().path().station(station.get())
            + " and hold"
        : super.whatNow(phase);
  }

  @Override
  public void result(String port, ResultDocument result, Path file) {
    search.station().ifPresent(station -> take(station, file));
  }

  private void take(int station, Path file) {
    try {
      search.take(station, JsonGate.read(file), file);
      search.advise();
      if (search.conclusion().isPresent()) {
        stop.run();
      }
    } catch (JsonRefusedException e) {
      notice(file + ": " + e.getMessage());
    }
  }
}
