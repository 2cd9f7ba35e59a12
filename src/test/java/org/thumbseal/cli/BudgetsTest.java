package org.thumbseal.cli;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.io.IOException;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.node.ObjectNode;

/**
 * The uncertainties of a written document, computed again from its budgets alone: JCGM 100:2008
 * (GUM) 5.1.2 for independent inputs, 4.3.7 for a rectangular and 4.3.9 for a triangular
 * distribution.
 */
class BudgetsTest {
  private static final double PRINTED = 0.000_05;

  /** What rounding to seven digits leaves of a sum of squares. */
  private static final double ROUNDED = 1e-6;

  static List<String> names() throws IOException {
    return GoldenCapturesTest.names();
  }

  private static List<ObjectNode> documents(String name) {
    Path capture = Path.of("fixtures", "captures", name + ".log");
    return Answer.to("replay", "--json", capture).documents();
  }

  @ParameterizedTest
  @MethodSource("names")
  void expandedUncertaintiesFollowFromTheBudgets(String name) {
    for (ObjectNode document : documents(name)) {
      for (Map.Entry<String, JsonNode> budget : document.get("budgets").properties()) {
        JsonNode quantity = document.get("measurements").get(budget.getKey());
        double expected = quantity.get("expandedUncertainty").doubleValue();
        double factor = quantity.get("coverageFactor").doubleValue();

        assertThat(factor * combined(budget.getValue().get("contributions")))
            .as(budget.getKey())
            .isCloseTo(expected, within(PRINTED + ROUNDED * expected));
      }
    }
  }

  private static double combined(JsonNode contributions) {
    double squares = 0;
    for (JsonNode line : contributions) {
      double contribution = number(line, "sensitivity") * uncertainty(line);
      assertThat(Math.abs(contribution))
          .as(line.toString())
          .isCloseTo(
              number(line, "contribution"), within(1e-12 + ROUNDED * Math.abs(contribution)));
      squares += contribution * contribution;
    }
    return Math.sqrt(squares);
  }

  private static double uncertainty(JsonNode line) {
    return switch (line.get("distribution").stringValue()) {
      case "rectangular" -> number(line, "halfWidth") / Math.sqrt(3);
      case "triangular" -> number(line, "halfWidth") / Math.sqrt(6);
      default -> number(line, "standardUncertainty");
    };
  }

  private static double number(JsonNode line, String name) {
    return line.get(name).doubleValue();
  }

  /** All measurements but those of the plain exponential, on which nothing is graded. */
  @ParameterizedTest
  @MethodSource("names")
  void everyMeasurementHasABudget(String name) {
    for (ObjectNode document : documents(name)) {
      Set<String> measured = new TreeSet<>(document.get("measurements").propertyNames());
      measured.removeAll(Set.of("timeConstant", "asymptote"));
      assertThat(new TreeSet<>(document.get("budgets").propertyNames())).isEqualTo(measured);
    }
  }

  /** An uncalibrated sensor: +-2.5 % of reading, rectangular, over the slope at the crossing. */
  @Test
  void theSensorLineOfTheRiseIsThatOfMeasurementPractice() {
    ObjectNode document = documents("sound").get(0);
    JsonNode sensor = document.at("/budgets/riseTime/contributions/0");

    assertThat(sensor.get("name").stringValue()).isEqualTo("sensor");
    assertThat(number(sensor, "halfWidth")).isCloseTo(0.025 * 65, within(1e-9));
    assertThat(sensor.get("unit").stringValue()).isEqualTo("kPa");
    assertThat(sensor.get("sensitivityUnit").stringValue()).isEqualTo("s/kPa");
  }
}
