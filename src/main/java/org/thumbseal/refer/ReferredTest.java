package org.thumbseal.refer;

import java.time.Instant;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * A test as it stands, corrections considered.
 *
 * @param at when; absent where the recording had no date
 * @param outcome what came out
 * @param seen what the curve suggested, and what a person looked at
 * @param values by their name in the document
 * @param source document
 */
public record ReferredTest(
    Optional<Instant> at, Outcome outcome, Seen seen, Map<String, Value> values, Source source) {
  /** Keeps a copy. */
  public ReferredTest {
    values = Map.copyOf(values);
  }

  /**
   * What came out.
   *
   * @param verdict {@code pass}, {@code fail}, {@code inconclusive} or {@code invalid}
   * @param voided why it does not count; absent where it does
   * @param note a remark added later
   * @param corrected whether anything was corrected after sealing
   */
  public record Outcome(
      String verdict, Optional<String> voided, Optional<String> note, boolean corrected) {
    /** What is shown: that it is void comes before what it was. */
    public String shown() {
      return voided.isPresent() ? "void" : verdict;
    }
  }

  /**
   * What was seen.
   *
   * @param findings of the curve, surest first
   * @param checks of the person
   */
  public record Seen(List<Suggested> findings, List<Looked> checks) {
    /** Keeps copies. */
    public Seen {
      findings = List.copyOf(findings);
      checks = List.copyOf(checks);
    }
  }

  /**
   * What the curve suggests.
   *
   * @param code of the finding
   * @param confidence 0 to 1
   */
  public record Suggested(String code, double confidence) {}

  /**
   * What a person looked at.
   *
   * @param item such as {@code gasket}
   * @param state {@code ok}, {@code not-ok} or {@code replaced}
   * @param part what was put in
   * @param reason why
   */
  public record Looked(String item, String state, Optional<String> part, Optional<String> reason) {
    /** Whether a part was put in. */
    public boolean isReplaced() {
      return state.equals("replaced");
    }
  }

  /**
   * A value.
   *
   * @param value in its unit
   * @param expanded expanded uncertainty U; absent where none was stated
   * @param unit UCUM code
   * @param isBound whether the true value may be anything below
   */
  public record Value(double value, Optional<Double> expanded, String unit, boolean isBound) {}

  /** Whether the pump was judged: what is void or invalid says nothing about it. */
  public boolean judges() {
    return outcome.voided().isEmpty() && !outcome.verdict().equals("invalid");
  }

  /** Whether it counts and was good. */
  public boolean isGood() {
    return judges() && outcome.verdict().equals("pass");
  }
}
