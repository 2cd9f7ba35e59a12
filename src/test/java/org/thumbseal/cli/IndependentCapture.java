package org.thumbseal.cli;

import java.nio.file.Path;
import java.util.List;
import java.util.OptionalDouble;
import java.util.stream.Stream;
import org.thumbseal.json.JsonGate;
import org.thumbseal.json.JsonRefusedException;
import tools.jackson.databind.JsonNode;

/**
 * A capture of fixtures/independent with what its model knows about it.
 *
 * @param name without extension
 * @param truth its entry in truth.json
 */
record IndependentCapture(String name, JsonNode truth) {
  static final Path FOLDER = Path.of("fixtures", "independent");

  /**
   * One quantity of a replay against the truth.
   *
   * @param quantity name in the document
   * @param truth in s or kPa
   * @param measured in the same unit
   * @param bound of the error, in the same unit
   */
  record Deviation(String quantity, double truth, double measured, double bound) {
    double error() {
      return measured - truth;
    }
  }

  static List<IndependentCapture> all() {
    try {
      return JsonGate.read(FOLDER.resolve("truth.json"))
          .propertyStream()
          .map(e -> new IndependentCapture(e.getKey(), e.getValue()))
          .toList();
    } catch (JsonRefusedException e) {
      throw new AssertionError(e);
    }
  }

  Path file() {
    return FOLDER.resolve(name + ".log");
  }

  /** What the document says about each true value, with the bounds of the project's task. */
  List<Deviation> deviations(JsonNode document) {
    return Stream.of(
            of("riseTime").stream()
                .mapToObj(t -> deviation(document, "riseTime", t, 0.060 + 0.005 * t)),
            of("maximumVacuum").stream()
                .mapToObj(t -> deviation(document, "maximumVacuum", t, 0.25)),
            of("occludedAt").stream()
                .mapToObj(
                    t ->
                        new Deviation(
                            "occludedAt", t, document.at("/test/occludedAt").doubleValue(), 0.060)))
        .flatMap(s -> s)
        .toList();
  }

  private static Deviation deviation(JsonNode document, String name, double truth, double bound) {
    JsonNode value = document.at("/measurements/" + name + "/value");
    return new Deviation(name, truth, value.isNumber() ? value.doubleValue() : Double.NaN, bound);
  }

  private OptionalDouble of(String quantity) {
    JsonNode value = truth.get(quantity);
    return value == null ? OptionalDouble.empty() : OptionalDouble.of(value.doubleValue());
  }

  @Override
  public String toString() {
    return name;
  }
}
