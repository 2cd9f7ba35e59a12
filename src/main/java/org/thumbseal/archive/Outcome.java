package org.thumbseal.archive;

import java.nio.file.Path;
import org.thumbseal.seal.SealAnswer;

/** What the check of one file came to; for a fault of the whole chain, of the directory. */
public sealed interface Outcome {
  /** The file, or the directory. */
  Path file();

  /**
   * It could be checked.
   *
   * @param file the file
   * @param answer one of the four
   * @param signer whose seal it is, by name or fingerprint; empty when that is not known
   * @param remark what is wrong, or could not be checked, in half a sentence; may be empty
   */
  record Answered(Path file, SealAnswer answer, String signer, String remark) implements Outcome {}

  /**
   * It is no document at all.
   *
   * @param file the file
   * @param reason why, in half a sentence
   */
  record Unreadable(Path file, String reason) implements Outcome {}
}
