package org.thumbseal.record;

import java.util.Optional;
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
 * @param evidence what it was graded from
 */
public record ResultDocument(
    String id,
    Optional<String> asset,
    TestFacts test,
    Measurement measurement,
    Grade grade,
    Evidence evidence) {
  /** Name and version of the document's shape. */
  public static final String SCHEMA = "thumbseal-result/1";

  /** What kind of result this is. */
  public static final String KIND = "occlusion-test";

  /** The same with its capture in a file of another name. */
  public ResultDocument withCapture(String name) {
    return new ResultDocument(id, asset, test, measurement, grade, evidence.named(name));
  }
}
