package org.thumbseal.archive;

import java.nio.file.Path;
import java.util.List;

/**
 * How much the check of a result directory has seen.
 *
 * @param directory the one that holds {@code head.json}
 * @param documents files taken for documents
 * @param captures captures that are the ones that were sealed
 * @param withoutCapture documents that name none
 * @param chains one for each key that sealed here
 */
public record DirectorySummary(
    Path directory, long documents, long captures, long withoutCapture, List<ChainSummary> chains) {
  /** Keeps a copy of the list. */
  public DirectorySummary {
    chains = List.copyOf(chains);
  }
}
