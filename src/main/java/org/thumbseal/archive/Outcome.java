package org.thumbseal.archive;

import java.nio.file.Path;
import java.util.List;
import org.thumbseal.record.Standing;
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
   * It is a result that was corrected. This is no answer: each correction has one of its own.
   *
   * @param file the result
   * @param corrections at least one, in the order in which they apply; strangers' too
   * @param standing what holds of the result now
   */
  record Corrected(Path file, List<SealedCorrection> corrections, Standing standing)
      implements Outcome {
    /** Keeps a copy of the corrections. */
    public Corrected {
      corrections = List.copyOf(corrections);
    }
  }

  /**
   * It is no document at all.
   *
   * @param file the file
   * @param reason why, in half a sentence
   */
  record Unreadable(Path file, String reason) implements Outcome {}

  /**
   * Worth knowing, and no fault: nothing that was sealed is touched by it.
   *
   * @param file the file, or the folder
   * @param remark what is odd about it, in half a sentence
   */
  record Remarked(Path file, String remark) implements Outcome {}
}
