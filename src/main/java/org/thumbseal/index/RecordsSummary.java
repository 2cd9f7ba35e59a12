package org.thumbseal.index;

import java.util.List;
import java.util.Map;

/**
 * What an index holds.
 *
 * @param base where it is, fit to be shown
 * @param version of its tables
 * @param documents how many there are of each kind
 * @param voided tests that do not count
 * @param keptOut how many files were kept out, and the first hundred of them
 * @param directories from which it was made
 */
public record RecordsSummary(
    String base,
    int version,
    Map<String, Long> documents,
    long voided,
    Out keptOut,
    List<String> directories) {
  /** Keeps copies. */
  public RecordsSummary {
    documents = Map.copyOf(documents);
    directories = List.copyOf(directories);
  }

  /**
   * What was kept out.
   *
   * @param count all
   * @param first the first of them
   */
  public record Out(long count, List<KeptOut> first) {
    /** Keeps a copy. */
    public Out {
      first = List.copyOf(first);
    }
  }
}
