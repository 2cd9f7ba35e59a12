package org.thumbseal.exchange;

import java.time.Instant;
import java.util.Comparator;
import org.thumbseal.archive.Outcome;

/**
 * A file that was checked, and where it comes in the order.
 *
 * @param outcome of its check
 * @param startedAt of its test; {@link Instant#MAX} for one without a date, which comes last
 * @param id of its test; empty where it cannot be told
 */
record ResultFile(Outcome outcome, Instant startedAt, String id) {
  /** The path is only there to make the order of two copies always the same. */
  static final Comparator<ResultFile> ORDER =
      Comparator.comparing(ResultFile::startedAt)
          .thenComparing(ResultFile::id)
          .thenComparing(f -> f.outcome().file());
}
