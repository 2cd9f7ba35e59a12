package org.thumbseal.archive;

/** Is told now and then how far the check of a directory has come. */
@FunctionalInterface
public interface VerificationProgress {
  /**
   * So many documents of so many have been looked at; what follows for the chains comes after.
   *
   * @param done how many
   * @param all of how many
   */
  void checked(long done, long all);
}
