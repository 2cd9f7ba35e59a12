package org.thumbseal.grade;

import java.util.Locale;

/** The outcome of a test, better ones first: the worst of all criteria decides. */
public enum Verdict {
  /** Every criterion met, by at least the uncertainty where the rule is guarded. */
  PASS,
  /** Too near a limit to tell. */
  INCONCLUSIVE,
  /** A criterion missed, by at least the uncertainty where the rule is guarded. */
  FAIL,
  /** Cannot be judged. */
  INVALID;

  /** The name in result documents. */
  public String code() {
    return name().toLowerCase(Locale.ROOT);
  }

  /** The worse of two. */
  public Verdict worse(Verdict other) {
    return compareTo(other) >= 0 ? this : other;
  }
}
