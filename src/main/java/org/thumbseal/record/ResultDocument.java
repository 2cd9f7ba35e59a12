package org.thumbseal.record;

import java.util.List;
import java.util.Optional;
import org.thumbseal.finding.Finding;
import org.thumbseal.grade.Grade;
import org.thumbseal.measurement.Measurement;
import org.thumbseal.measurement.Observed;
import org.thumbseal.visit.Check;

/**
 * The result of one occlusion test, before it is sealed.
 *
 * @param id see {@link ResultId}
 * @param asset id of the pump; absent where the test is not assigned
 * @param checks what was looked at before it: all items in order, or none where nothing was said
 * @param test when, where from and with what
 * @param observed the test, or that the inlet was not blocked
 * @param grade the verdict
 * @param findings what the curve suggests is wrong, surest first
 * @param comparedWith id of the result of the sound pump that the findings rest on
 * @param evidence what it was graded from
 */
public record ResultDocument(
    String id,
    Optional<String> asset,
    List<Check> checks,
    TestFacts test,
    Observed observed,
    Grade grade,
    List<Finding> findings,
    Optional<String> comparedWith,
    Evidence evidence) {
  /** Keeps a copy of the lists. */
  public ResultDocument {
    checks = List.copyOf(checks);
    findings = List.copyOf(findings);
  }

  /** Name and version of the document's shape. */
  public static final String SCHEMA = "thumbseal-result/1";

  /** What kind of result this is. */
  public static final String KIND = "occlusion-test";

  /** The same with its capture in a file of another name. */
  public ResultDocument withCapture(String name) {
    return new ResultDocument(
        id, asset, checks, test, observed, grade, findings, comparedWith, evidence.named(name));
  }

  /** The quantities of the test; absent where the inlet was not blocked after a start. */
  public Optional<Measurement> measurement() {
    return observed instanceof Measurement measured ? Optional.of(measured) : Optional.empty();
  }
}
