package org.thumbseal.json;

import java.nio.file.Path;
import java.util.Optional;
import java.util.Set;
import org.thumbseal.finding.Signs;
import org.thumbseal.finding.SoundRecord;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.node.ObjectNode;

/** Reads from a result what a later test of the same pump is compared with. */
public final class SoundRecordFile {
  private static final double STANDARD_AMBIENT = 101.325;

  private final ObjectNode tree;

  private SoundRecordFile(ObjectNode tree) {
    this.tree = tree;
  }

  /**
   * Reads a result document.
   *
   * @throws JsonRefusedException with one line that says why the file cannot serve
   */
  public static SoundRecord read(Path file) throws JsonRefusedException {
    return of(JsonGate.read(file));
  }

  /**
   * Takes a result document.
   *
   * @throws JsonRefusedException with one line that says why it cannot serve
   */
  public static SoundRecord of(ObjectNode tree) throws JsonRefusedException {
    return new SoundRecordFile(tree).record();
  }

  private SoundRecord record() throws JsonRefusedException {
    if (!"occlusion-test".equals(tree.path("kind").asString(""))) {
      throw new JsonRefusedException("is not the result of an occlusion test");
    }
    if (!"pass".equals(tree.path("verdict").asString(""))) {
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
            Set.of("given", "sensor", "at-rest")
                .contains(tree.at("/test/ambient/from").asString(""))));
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
