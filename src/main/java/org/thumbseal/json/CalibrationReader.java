package org.thumbseal.json;

import java.time.DateTimeException;
import java.time.Instant;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.thumbseal.calibration.Calibration;
import org.thumbseal.calibration.CalibrationFacts;
import org.thumbseal.calibration.CalibrationPoint;
import org.thumbseal.calibration.CalibrationRefused;
import org.thumbseal.calibration.ReferenceGauge;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.node.ObjectNode;

/**
 * Reads a calibration document. What was worked out from the pairs is worked out again, so that a
 * test rests on nothing but what was read at the gauge.
 */
public final class CalibrationReader {
  private final ObjectNode tree;

  private CalibrationReader(ObjectNode tree) {
    this.tree = tree;
  }

  /** Whether a document says that it is a calibration, of whatever version. */
  public static boolean isCalibration(ObjectNode tree) {
    return tree.path("kind").asString("").equals(CalibrationTree.KIND);
  }

  /**
   * Reads a document whose seal is good.
   *
   * @throws JsonRefusedException with half a sentence if it is none, or its pairs are nonsense
   */
  public static Calibration read(ObjectNode tree) throws JsonRefusedException {
    if (!tree.path("schema").asString("").equals(CalibrationTree.SCHEMA)) {
      throw new JsonRefusedException("is no calibration of version 1");
    }
    CalibrationReader reader = new CalibrationReader(tree);
    try {
      return Calibration.of(reader.text("/id"), reader.facts(), reader.points());
    } catch (CalibrationRefused e) {
      throw new JsonRefusedException("is no sound calibration: " + e.getMessage());
    } catch (DateTimeException e) {
      throw new JsonRefusedException("has a date that is none");
    }
  }

  private CalibrationFacts facts() throws JsonRefusedException {
    return new CalibrationFacts(
        text("/sensor/id"),
        Instant.parse(text("/calibratedAt")),
        LocalDate.parse(text("/due")),
        new ReferenceGauge(
            text("/reference/name"),
            text("/reference/certificate"),
            number(tree, "/reference/uncertainty/expandedUncertainty"),
            number(tree, "/reference/uncertainty/coverageFactor")),
        number(tree, "/repeatability/value"),
        tree.has("temperature")
            ? Optional.of(number(tree, "/temperature/value"))
            : Optional.empty(),
        tree.has("by") ? Optional.of(text("/by")) : Optional.empty());
  }

  private List<CalibrationPoint> points() throws JsonRefusedException {
    List<CalibrationPoint> points = new ArrayList<>();
    for (JsonNode pair : tree.path("pairs")) {
      points.add(new CalibrationPoint(number(pair, "/sensor"), number(pair, "/reference")));
    }
    return points;
  }

  private String text(String path) throws JsonRefusedException {
    JsonNode node = tree.at(path);
    if (!node.isString()) {
      throw missing(path);
    }
    return node.stringValue();
  }

  private static double number(JsonNode from, String path) throws JsonRefusedException {
    JsonNode node = from.at(path);
    if (!node.isNumber()) {
      throw missing(path);
    }
    return node.doubleValue();
  }

  private static JsonRefusedException missing(String path) {
    return new JsonRefusedException("has no " + path.substring(1).replace('/', '.'));
  }
}
