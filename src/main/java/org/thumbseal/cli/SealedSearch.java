package org.thumbseal.cli;

import java.util.Optional;
import java.util.function.Consumer;
import org.thumbseal.archive.Archive;
import org.thumbseal.archive.ArchiveException;
import org.thumbseal.archive.StoredResult;
import org.thumbseal.json.CalibrationTree;
import org.thumbseal.json.Canonical;
import org.thumbseal.json.LeakSearchTree;
import org.thumbseal.link.HostClock;
import org.thumbseal.record.ResultId;
import org.thumbseal.seal.Sha256;
import org.thumbseal.seek.Conclusion;
import org.thumbseal.seek.LeakSearch;
import org.thumbseal.seek.SearchState;
import org.thumbseal.seek.SearchWords;
import org.thumbseal.seek.Step;

/** The end of a search: said, sealed and stored. */
final class SealedSearch {
  private final Said said;
  private final HostClock clock;

  /**
   * What the search is about.
   *
   * @param asset the pump
   * @param by who searched
   * @param litres volume of the jar, L
   */
  record Said(String asset, Optional<String> by, Optional<Double> litres) {}

  /**
   * Where the answer goes.
   *
   * @param say sentences
   * @param print the sealed document
   */
  record Out(Consumer<String> say, Consumer<String> print) {}

  SealedSearch(Said said, HostClock clock) {
    this.said = said;
    this.clock = clock;
  }

  /** Seals a search that is over, and says what it found; the exit code. */
  int answer(SearchState state, Archive archive, Out out) {
    if (!(state.next() instanceof Step.Stop stop)) {
      throw new IllegalStateException("the search goes on");
    }
    Conclusion found = stop.conclusion();
    try {
      StoredResult stored = archive.store(LeakSearchTree.of(document(state, found)));
      SearchWords words = new SearchWords(state);
      out.say().accept(said.asset() + ": " + words.found(found));
      out.say().accept("  " + words.advice(found));
      out.say().accept("  " + stored.document());
      out.print().accept(Canonical.text(stored.sealed()));
    } catch (ArchiveException e) {
      throw Failure.machine(String.valueOf(e.getMessage()));
    }
    return found.verdict() == Conclusion.Verdict.TIGHT ? ExitCode.GOOD : ExitCode.NOT_PASSED;
  }

  private LeakSearch document(SearchState state, Conclusion found) {
    var about = new LeakSearch.About(said.asset(), said.by(), said.litres());
    String digest = Sha256.hex(Canonical.bytes(LeakSearchTree.said(about, state, found)));
    return new LeakSearch(
        ResultId.of(digest, 1), about, state, found, CalibrationTree.toMillis(clock.wall()));
  }
}
