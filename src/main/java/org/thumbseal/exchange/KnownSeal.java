package org.thumbseal.exchange;

import java.util.Optional;
import org.thumbseal.seal.LedgerEntry;
import org.thumbseal.seal.SealAnswer;

/**
 * What is known of the seal of a result.
 *
 * @param answer what it came to, capture and chain considered
 * @param signer whose it is, by name or fingerprint; empty when that is not known
 * @param remark what is wrong, or could not be checked, in half a sentence; may be empty
 * @param entry key, place and digest; absent where the document is not sealed
 */
public record KnownSeal(
    SealAnswer answer, String signer, String remark, Optional<LedgerEntry> entry) {
  /** Whether a logbook may rest on it. */
  public boolean isTrusted() {
    return answer == SealAnswer.TRUSTED_KEY;
  }

  /** Answer and remark in one line. */
  public String text() {
    return remark.isEmpty() ? answer.text() : answer.text() + ": " + remark;
  }
}
