package org.thumbseal.index;

import java.time.Instant;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.thumbseal.record.Standing;

/**
 * One occlusion test as it stands: trusted corrections are in it.
 *
 * @param origin which document it is
 * @param startedAt wall clock at the first sample; absent for a recording without a date
 * @param standing pump, note, and why it does not count if it does not
 * @param verdict {@code pass}, {@code fail}, {@code inconclusive} or {@code invalid}
 * @param conditions what it was measured under and held against
 * @param details what was measured, found and looked at
 */
public record IndexedTest(
    Origin origin,
    Optional<Instant> startedAt,
    Standing standing,
    String verdict,
    Conditions conditions,
    Details details) {
  /** Id of the document. */
  public String id() {
    return origin.id();
  }

  /**
   * Whether trend, due date and referral may rest on it: it is neither void nor of a leak search.
   */
  public boolean counts() {
    return standing.voided().isEmpty();
  }

  /** A measured value by its name in the document, such as {@code riseTime}. */
  public Optional<IndexedQuantity> quantity(String name) {
    return Optional.ofNullable(details.quantities().get(name));
  }

  /**
   * Where a document lies and stands.
   *
   * @param id of the document
   * @param path relative to its results directory, with {@code /}
   * @param kid thumbprint of the key that sealed it
   * @param sequence its number among those of the key
   * @param digest SHA-256 of its canonical form with the signature
   */
  public record Origin(String id, String path, String kid, long sequence, String digest) {}

  /**
   * What a trend needs besides the values.
   *
   * @param ambient pressure, kPa
   * @param jar volume of the jar, L
   * @param sensor id of the sensor
   * @param calibration id of the calibration that was used, or {@code uncalibrated}
   * @param limits the criteria as they were applied
   */
  public record Conditions(
      Optional<Double> ambient,
      Optional<Double> jar,
      Optional<String> sensor,
      Optional<String> calibration,
      Limits limits) {}

  /**
   * Criteria as they were applied, altitude considered.
   *
   * @param name of the criteria
   * @param rise asked for within the limit, kPa
   * @param riseTime longest, s
   * @param maximum lowest maximum vacuum, kPa
   * @param ratedSpeed that the criteria name, L/min
   */
  public record Limits(
      Optional<String> name,
      Optional<Double> rise,
      Optional<Double> riseTime,
      Optional<Double> maximum,
      Optional<Double> ratedSpeed) {}

  /**
   * Lists in the order of the document.
   *
   * @param quantities by name
   * @param reasons codes
   * @param findings surest first
   * @param checks all but those that were not made
   */
  public record Details(
      Map<String, IndexedQuantity> quantities,
      List<String> reasons,
      List<IndexedFinding> findings,
      List<IndexedCheck> checks) {
    /** Keeps copies. */
    public Details {
      quantities = Map.copyOf(quantities);
      reasons = List.copyOf(reasons);
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
  public record IndexedFinding(String code, double confidence) {}

  /**
   * What a person looked at.
   *
   * @param item such as {@code gasket}
   * @param state {@code ok}, {@code not-ok} or {@code replaced}
   * @param part what was put in
   * @param reason why
   */
  public record IndexedCheck(
      String item, String state, Optional<String> part, Optional<String> reason) {}
}
