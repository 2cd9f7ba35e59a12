package org.thumbseal.cli;

import java.io.PrintWriter;
import java.util.Optional;
import org.thumbseal.index.IngestProgress;

/**
 * The progress line of an index that takes in documents. Nobody is asked whether it would be seen
 * before there is something to show: as a rule hardly anything is new.
 */
final class IngestLine implements IngestProgress {
  private final PrintWriter err;
  private Optional<ProgressLine> line = Optional.empty();

  IngestLine(PrintWriter err) {
    this.err = err;
  }

  @Override
  public void seen(long done, long all) {
    if (done >= all) {
      return;
    }
    if (line.isEmpty()) {
      line = Optional.of(new ProgressLine(err, StandardError.isSeen(), System::nanoTime));
    }
    line.get().show(done, all);
  }

  /** Wipes it away, before something else is written. */
  void clear() {
    line.ifPresent(ProgressLine::clear);
  }
}
