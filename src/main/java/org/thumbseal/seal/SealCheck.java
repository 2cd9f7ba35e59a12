package org.thumbseal.seal;

/**
 * The outcome of checking one seal.
 *
 * @param answer never {@link SealAnswer#BROKEN_CHAIN}: one document alone has no neighbours
 * @param signer whose seal it is, by name or fingerprint; empty when that is not known
 * @param reason what is wrong in half a sentence; empty when nothing is
 */
public record SealCheck(SealAnswer answer, String signer, String reason) {
  /** Whether the document is as it was when it was sealed, whoever sealed it. */
  public boolean intact() {
    return answer.compareTo(SealAnswer.BROKEN_CHAIN) < 0;
  }

  static SealCheck broken(String reason) {
    return new SealCheck(SealAnswer.BROKEN_SEAL, "", reason);
  }
}
