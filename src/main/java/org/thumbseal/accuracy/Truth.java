package org.thumbseal.accuracy;

import java.util.HashMap;
import java.util.Map;
import java.util.Optional;
import org.thumbseal.simulate.Fault;
import org.thumbseal.simulate.Plant;
import org.thumbseal.simulate.TestTruth;
import tools.jackson.databind.JsonNode;

/**
 * What a test really was.
 *
 * @param values by the names of the result document, in s, kPa and L/min
 * @param jarLitres what is printed on the jar, L
 * @param ambient barometric pressure, kPa
 * @param fault what was wrong
 */
record Truth(Map<String, Double> values, double jarLitres, double ambient, Fault fault) {
  static final String OPEN = "openVacuum";
  static final String RISE = "riseTime";
  static final String MAXIMUM = "maximumVacuum";
  static final String ONSET = "occludedAt";
  static final String SPEED = "pumpingSpeed";
  static final String LEAK = "leakRate";

  /** The default criteria (common practice, no published source). */
  private static final double RISE_SECONDS = 10;

  private static final double RISE_KILOPASCALS = 65;
  private static final double MAXIMUM_KILOPASCALS = 80;
  private static final double UNADJUSTED_FROM = 98;
  private static final double STANDARD = 101.325;

  Truth {
    values = Map.copyOf(values);
  }

  /** The truth of a simulated test; what leaks while the pump rests is the jar's and the pump's. */
  static Truth of(TestTruth test) {
    Plant plant = test.plant();
    Map<String, Double> values = new HashMap<>();
    values.put(ONSET, test.occludedAt());
    values.put(OPEN, test.openVacuum());
    values.put(SPEED, plant.pump().litresPerMinute());
    values.put(LEAK, plant.leakLitresPerMinute() + plant.restingLeakLitresPerMinute());
    test.riseTime().ifPresent(t -> values.put(RISE, t));
    test.maximumVacuum().ifPresent(v -> values.put(MAXIMUM, v));
    double ambient = plant.weather().pascals() / 1_000;
    return new Truth(values, plant.jar().nominalLitres(), ambient, plant.fault());
  }

  /** An entry of a truth file. */
  static Truth of(JsonNode entry) {
    Map<String, Double> values = new HashMap<>();
    for (String name : new String[] {ONSET, OPEN, RISE, MAXIMUM}) {
      number(entry, name).ifPresent(v -> values.put(name, v));
    }
    number(entry, "speed").ifPresent(v -> values.put(SPEED, v));
    number(entry, "leak").ifPresent(v -> values.put(LEAK, v));
    return new Truth(
        values,
        number(entry, "nominalJar").or(() -> number(entry, "jar")).orElse(0.0),
        number(entry, "ambient").orElse(STANDARD),
        Fault.NONE);
  }

  private static Optional<Double> number(JsonNode entry, String name) {
    JsonNode value = entry.get(name);
    return value == null || !value.isNumber() ? Optional.empty() : Optional.of(value.doubleValue());
  }

  Optional<Double> value(String name) {
    return Optional.ofNullable(values.get(name));
  }

  /** Whether the test lets itself be judged. */
  boolean isWhole() {
    return values.containsKey(MAXIMUM);
  }

  /**
   * How far the pump is inside the limits, in expanded uncertainties of what was measured; negative
   * for one that has to fail. Empty where there is no truth to judge by.
   */
  Optional<Double> margin(Measured measured) {
    double uncertainty = measured.expanded(MAXIMUM);
    return value(MAXIMUM)
        .map(v -> (v - MAXIMUM_KILOPASCALS * factor()) / uncertainty)
        .map(high -> Math.min(high, riseMargin(measured)));
  }

  private double riseMargin(Measured measured) {
    double highest = values.getOrDefault(MAXIMUM, 0.0) - values.getOrDefault(OPEN, 0.0);
    double missing = RISE_KILOPASCALS * factor() - highest;
    return value(RISE)
        .map(t -> (RISE_SECONDS - t) / measured.expanded(RISE))
        .orElse(-missing / measured.expanded(MAXIMUM));
  }

  private double factor() {
    return ambient < UNADJUSTED_FROM ? ambient / STANDARD : 1;
  }
}
