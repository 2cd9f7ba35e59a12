package org.thumbseal.seek;

import java.util.List;
import java.util.Locale;

/**
 * What a search found.
 *
 * @param verdict of what kind
 * @param leaking single sections that leak for certain, worst first; empty where none does
 */
public record Conclusion(Verdict verdict, List<Span> leaking) {
  /** Keeps a copy. */
  public Conclusion {
    leaking = List.copyOf(leaking);
  }

  /** Nothing leaks for certain. */
  static Conclusion none(Verdict verdict) {
    return new Conclusion(verdict, List.of());
  }

  /** The kinds; a closed list, for importers. */
  public enum Verdict {
    /** One section leaks, and for certain more than any other that was looked at. */
    SECTION_LEAKS,
    /** Several leak, and which is worst cannot be told. */
    SEVERAL_LEAK,
    /** No section leaks within the uncertainty, and the pump reaches its limit. */
    TIGHT,
    /** No section in front of the pump leaks, and yet the vacuum is too low. */
    PUMP_WEAK,
    /** No section leaks for certain, and whether the vacuum is too low cannot be told. */
    UNDECIDED;

    /** The name in documents. */
    public String code() {
      return name().toLowerCase(Locale.ROOT).replace('_', '-');
    }
  }
}
