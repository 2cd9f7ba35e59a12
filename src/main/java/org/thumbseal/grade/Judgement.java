package org.thumbseal.grade;

/**
 * What one criterion says.
 *
 * @param verdict for this criterion alone; {@link Verdict#PASS} for what is only worth a word
 * @param reason why
 */
record Judgement(Verdict verdict, Reason reason) {
  static Judgement of(Verdict verdict, ReasonCode code, String text) {
    return new Judgement(verdict, new Reason(code, text));
  }
}
