package org.thumbseal.guided;

import java.util.Optional;
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

/** The end of a search: worded, sealed and stored. */
public final class SealedSearch {
  private final Said said;
  private final HostClock clock;

  /**
   * What the search is about.
   *
   * @param asset the pump
   * @param by who searched
   * @param litres volume of the jar, L
   */
  public record Said(String asset, Optional<String> by, Optional<Double> litres) {}

  /**
   * What came out.
   *
   * @param found in short
   * @param sentence what was found, with the numbers
   * @param advice what to do about it
   * @param stored the sealed document
   */
  public record Answer(Conclusion found, String sentence, String advice, StoredResult stored) {}

  /** A search of a pump, dated by this clock. */
  public SealedSearch(Said said, HostClock clock) {
    this.said = said;
    this.clock = clock;
  }

  /**
   * Seals a search that is over. The same tests give the same document.
   *
   * @throws ArchiveException if it cannot be written; it may be tried again
   * @throws IllegalStateException if the search goes on
   */
  public Answer seal(SearchState state, Sealing sealing) throws ArchiveException {
    if (!(state.next() instanceof Step.Stop stop)) {
      throw new IllegalStateException("the search goes on");
    }
    Conclusion found = stop.conclusion();
    SearchWords words = new SearchWords(state);
    StoredResult stored = sealing.store(LeakSearchTree.of(document(state, found)));
    return new Answer(found, words.found(found), words.advice(found), stored);
  }

  private LeakSearch document(SearchState state, Conclusion found) {
    var about = new LeakSearch.About(said.asset(), said.by(), said.litres());
    String digest = Sha256.hex(Canonical.bytes(LeakSearchTree.said(about, state, found)));
    return new LeakSearch(
        ResultId.of(digest, 1), about, state, found, CalibrationTree.toMillis(clock.wall()));
  }
}
