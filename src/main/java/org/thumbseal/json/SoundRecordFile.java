package org.thumbseal.json;

import java.util.Arrays;
import java.util.Optional;
import org.thumbseal.finding.Signs;
import org.thumbseal.finding.SoundRecord;
import org.thumbseal.grade.Verdict;
import org.thumbseal.measurement.AmbientPressure.Origin;
import org.thumbseal.quantity.StandardAtmosphere;
import org.thumbseal.record.ResultDocument;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.node.ObjectNode;

/** Reads from a result what a later test of the same pump is compared with. */
public final class SoundRecordFile {
  /** What stands in where the ambient pressure is not known, kPa. */
  private static final double STANDARD_AMBIENT = StandardAtmosphere.SEA_LEVEL_PASCALS / 1_000;

  private final ObjectNode tree;

  private SoundRecordFile(ObjectNode tree) {
    this.tree = tree;
  }

  /**
   * Takes a result document, whose seal is the caller's to check.
   *
   * @throws JsonRefusedException with one line that says why it cannot serve
   */
  public static SoundRecord of(ObjectNode tree) throws JsonRefusedException {
    return new SoundRecordFile(tree).record();
  }

  private SoundRecord record() throws JsonRefusedException {
    if (!ResultDocument.KIND.equals(tree.path("kind").asString(""))) {
      throw new JsonRefusedException("is not the result of an occlusion test");
    }
    if (!Verdict.PASS.code().equals(tree.path("verdict").asString(""))) {
      throw new JsonRefusedException(
          "is no record of a sound pump: its verdict is '"
              + Printable.line(tree.path("verdict").asString(""))
              + "'; give one that passed");
    }
    double ambient = ambient();
    return new SoundRecord(
        tree.path("id").asString(""),
        Optional.of(tree.at("/asset/id").asString("")).filter(a -> !a.isBlank()),
        new Signs(
            value("/measurements/openVacuum") / ambient,
            value("/measurements/maximumVacuum") / ambient,
            Optional.of(pump(ambient)),
            isMeasured(tree.at("/test/ambient/from").asString(""))));
  }

  private static boolean isMeasured(String from) {
    return Arrays.stream(Origin.values())
        .anyMatch(o -> o != Origin.ALTITUDE && o.code().equals(from));
  }

  private double ambient() throws JsonRefusedException {
    JsonNode given = tree.at("/test/ambient/quantity/value");
    return given.isMissingNode() ? STANDARD_AMBIENT : value("/test/ambient/quantity");
  }

  private Signs.Pump pump(double ambient) throws JsonRefusedException {
    String model = "/diagnostics/pumpModel/";
    double rate = value(model + "speedOverVolume");
    return new Signs.Pump(
        rate,
        value(model + "ultimatePressure") / ambient,
        optional(model + "leakOverVolume") / rate,
        optional(model + "restriction"),
        Optional.empty());
  }

  private double optional(String path) throws JsonRefusedException {
    return tree.at(path).isMissingNode() ? 0 : value(path);
  }

  private double value(String path) throws JsonRefusedException {
    JsonNode node = tree.at(path + "/value");
    if (!node.isNumber() || !(Math.abs(node.doubleValue()) < 1e6)) {
      throw new JsonRefusedException(
          "lacks " + path.substring(1).replace('/', '.') + ", which the comparison needs");
    }
    return node.doubleValue();
  }
}
