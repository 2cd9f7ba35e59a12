package org.thumbseal.index;

/** Is told now and then how far the reading of new documents has come. */
@FunctionalInterface
public interface IngestProgress {
  /** Nobody looks. */
  IngestProgress NONE = (done, all) -> {};

  /**
   * So many files of so many in the folders that are looked through were seen.
   *
   * @param done how many
   * @param all of how many
   */
  void seen(long done, long all);
}
