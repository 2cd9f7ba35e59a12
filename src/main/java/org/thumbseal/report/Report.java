package org.thumbseal.report;

import java.time.Instant;
import java.util.List;
import java.util.Optional;
import org.thumbseal.json.DocumentView;
import org.thumbseal.record.Standing;

/**
 * All that a page about one result is made of.
 *
 * @param document the result as it was sealed or printed
 * @param standing what holds of it now
 * @param corrections that were applied, a line each
 * @param seal of the document
 * @param trace its curve
 */
public record Report(
    DocumentView document,
    Standing standing,
    List<String> corrections,
    SealFacts seal,
    Trace trace) {
  /** Keeps a copy. */
  public Report {
    corrections = List.copyOf(corrections);
  }

  /**
   * A result that nothing more is known of yet.
   *
   * @param noCurve why there is no curve
   */
  public Report(DocumentView document, SealFacts seal, String noCurve) {
    this(document, Standing.sealed(Optional.empty()), List.of(), seal, Trace.none(noCurve));
  }

  /** The same as it stands now, by corrections that are told in a line each. */
  public Report standing(Standing now, List<String> lines) {
    return new Report(document, now, lines, seal, trace);
  }

  /** The same with its curve. */
  public Report drawn(Trace curve) {
    return new Report(document, standing, corrections, seal, curve);
  }

  /** The verdict as it was sealed; "invalid" where there is none of the four. */
  String verdict() {
    return document.text("/verdict").filter(VerdictShape::isKnown).orElse("invalid");
  }

  /** What is shown as the verdict: that a void result does not count comes before what it was. */
  String shown() {
    return standing.voided().isPresent() ? "void" : verdict();
  }

  /** The pump, or that there is none. */
  String asset() {
    return standing.asset().orElseGet(() -> Words.text("unassigned"));
  }

  Optional<String> id() {
    return document.text("/id");
  }

  /** The instant of the blocking; absent where the recording had no date. */
  public Optional<Instant> blockedAt() {
    return UtcTime.blocked(document);
  }
}
