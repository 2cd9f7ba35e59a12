package org.thumbseal.index;

import java.util.List;

/**
 * What came of bringing an index up to date.
 *
 * @param added documents that are new in it
 * @param removed documents that are no longer in their directory, or not trusted any more
 * @param keptOut the first files that were looked at and kept out
 * @param remarks what else a person should know, a line each
 */
public record Refreshed(long added, long removed, List<KeptOut> keptOut, List<String> remarks) {
  /** Keeps copies. */
  public Refreshed {
    keptOut = List.copyOf(keptOut);
    remarks = List.copyOf(remarks);
  }
}
