package org.thumbseal.daemon;

import org.thumbseal.archive.Archive;
import org.thumbseal.archive.ArchiveException;
import org.thumbseal.archive.StoredResult;
import org.thumbseal.capture.Capture;
import org.thumbseal.json.ResultTree;
import org.thumbseal.record.ResultDocument;

/** Where the recorders of all ports put their results: one at a time, for the chain is one. */
public final class ResultStore {
  private final Archive archive;

  /** Writes into an open archive. */
  public ResultStore(Archive archive) {
    this.archive = archive;
  }

  /**
   * Seals and stores a result with its capture.
   *
   * @throws ArchiveException if it cannot be written; it may be tried again
   */
  synchronized StoredResult store(ResultDocument result, Capture capture) throws ArchiveException {
    return archive.store(ResultTree.of(result), capture.format());
  }
}
