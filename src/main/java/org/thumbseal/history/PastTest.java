package org.thumbseal.history;

import java.time.Instant;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * One test as it stands now.
 *
 * @param id of the result
 * @param at when; absent where the recording had no date
 * @param outcome what came out
 * @param setting what it was made with
 * @param values what was measured
 */
public record PastTest(
    String id, Optional<Instant> at, Outcome outcome, Setting setting, Map<Kind, Value> values) {
  /** Keeps a copy. */
  public PastTest {
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
   * What it was made with.
   *
   * @param sensor the sensor and its calibration: values of the same one share their common error
   * @param jar volume, L
   * @param replaced parts that were replaced before it, as they are called
   * @param limits as they were applied
   */
  public record Setting(
      String sensor, Optional<Double> jar, List<String> replaced, Map<Kind, Double> limits) {
    /** Keeps copies. */
    public Setting {
      replaced = List.copyOf(replaced);
      limits = Map.copyOf(limits);
    }
  }

  /**
   * A value.
   *
   * @param value in the unit of its kind
   * @param expanded expanded uncertainty U; 0 where none was stated
   */
  public record Value(double value, double expanded) {}

  /** Whether the pump was judged: what is void or invalid says nothing about it. */
  public boolean judges() {
    return outcome.voided().isEmpty() && !outcome.verdict().equals("invalid");
  }

  /** The value of a kind, if a trend may rest on it. */
  Optional<Value> counted(Kind kind) {
    return judges() && at.isPresent() ? Optional.ofNullable(values.get(kind)) : Optional.empty();
  }
}
