package org.thumbseal.finding;

/**
 * What a curve suggests is wrong. Never part of the verdict.
 *
 * @param code what it is
 * @param confidence of so many findings said with it, this share is right, 0 to 1; held to
 *     simulated pumps, see src/docs/accuracy.md
 * @param text the evidence, a sentence with numbers
 * @param advice what to check next
 */
public record Finding(FindingCode code, double confidence, String text, String advice) {

  static Finding of(FindingCode code, double confidence, String text) {
    return new Finding(code, confidence, text, code.advice());
  }

  /** The same with a further observation to make. */
  Finding orElseBy(String observation) {
    return new Finding(code, confidence, text, advice + " " + observation);
  }
}
