package org.thumbseal.record;

import java.util.List;
import java.util.Optional;
import org.thumbseal.finding.Finding;
import org.thumbseal.grade.Grade;
import org.thumbseal.measurement.Measurement;

/**
 * The result of one occlusion test, before it is sealed.
 *
 * @param id see {@link ResultId}
 * @param asset id of the pump; absent where the test is not assigned
 * @param test when, where from and with what
 * @param measurement the quantities
 * @param grade the verdict
 * @param findings what the curve suggests is wrong, surest first
 * @param comparedWith id of the result of the sound pump that the findings rest on
 * @param evidence what it was graded from
 */
public record ResultDocument(
    String id,
    Optional<String> asset,
    TestFacts test,
    Measurement measurement,
    Grade grade,
    List<Finding> findings,
    Optional<String> comparedWith,
    Evidence evidence) {
  /** Keeps a copy of the findings. */
  public ResultDocument {
    findings = List.copyOf(findings);
  }

  /** Name and version of the document's shape. */
  public static final String SCHEMA = "thumbseal-result/1";

  /** What kind of result this is. */
  public static final String KIND = "occlusion-test";

  /** The same with its capture in a file of another name. */
  public ResultDocument withCapture(String name) {
    return new ResultDocument(
        id, asset, test, measurement, grade, findings, comparedWith, evidence.named(name));
  }
}
