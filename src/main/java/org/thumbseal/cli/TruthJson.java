package org.thumbseal.cli;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.StringJoiner;
import java.util.stream.Collectors;
import org.thumbseal.simulate.Plant;
import org.thumbseal.simulate.Scenario;
import org.thumbseal.simulate.SimulationKind;
import org.thumbseal.simulate.TestTruth;

/**
 * What each test really was, as JSON: seconds, kPa, litres and L/min of ambient air. A value that
 * does not exist is absent; {@code severity} is in the measure of its fault.
 */
final class TruthJson {
  private static final int DECIMALS = 4;

  private TruthJson() {}

  static String of(SimulationKind kind, Scenario scenario) {
    String tests =
        scenario.truth().stream().map(TruthJson::test).collect(Collectors.joining(",\n    "));
    return "{\n  \"kind\": \""
        + kind.code()
        + "\",\n  \"seed\": "
        + scenario.seed()
        + ",\n  \"tests\": [\n    "
        + tests
        + "\n  ]\n}\n";
  }

  private static String test(TestTruth truth) {
    StringJoiner members = new StringJoiner(", ", "{", "}");
    add(members, "occludedAt", truth.occludedAt());
    add(members, "endedAt", truth.endedAt());
    add(members, "openVacuum", truth.openVacuum());
    truth.riseTime().ifPresent(value -> add(members, "riseTime", value));
    truth.maximumVacuum().ifPresent(value -> add(members, "maximumVacuum", value));
    add(members, "targetRise", truth.targetRise());
    add(members, "ambient", truth.plant().weather().pascals() / 1_000);
    add(members, "jar", truth.plant().jar().litres());
    addPump(members, truth.plant());
    return members.toString();
  }

  private static void addPump(StringJoiner members, Plant plant) {
    add(members, "nominalJar", plant.jar().nominalLitres());
    add(members, "speed", plant.pump().litresPerMinute());
    add(members, "ultimatePressure", plant.ultimatePascals() / 1_000);
    add(members, "leak", plant.leakLitresPerMinute());
    add(members, "restingLeak", plant.restingLeakLitresPerMinute());
    members.add("\"fault\": \"" + plant.fault().kind().finding() + "\"");
    add(members, "severity", plant.fault().severity());
  }

  private static void add(StringJoiner members, String name, double value) {
    BigDecimal rounded = BigDecimal.valueOf(value).setScale(DECIMALS, RoundingMode.HALF_UP);
    members.add("\"" + name + "\": " + rounded.toPlainString());
  }
}
