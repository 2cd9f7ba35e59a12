package org.thumbseal.archive;

import java.nio.file.Path;
import org.thumbseal.record.Correction;
import org.thumbseal.seal.SealAnswer;

/**
 * A correction as it lies in a result directory.
 *
 * @param file its document
 * @param answer what its own seal came to; never broken
 * @param signer whose seal it is, by name or fingerprint
 * @param correction what it says
 */
public record SealedCorrection(Path file, SealAnswer answer, String signer, Correction correction) {
  /** Whether it changes anything: a stranger's does not. */
  public boolean counts() {
    return answer == SealAnswer.TRUSTED_KEY;
  }
}
