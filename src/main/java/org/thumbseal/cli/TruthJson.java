package org.thumbseal.cli;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.StringJoiner;
import java.util.stream.Collectors;
import org.thumbseal.simulate.Scenario;
import org.thumbseal.simulate.SimulationKind;
import org.thumbseal.simulate.TestTruth;

/**
 * What each test really was, as JSON: seconds, kPa, litres and L/min. A value that does not exist
 * is absent.
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
    add(members, "speed", truth.plant().pump().litresPerMinute());
    return members.toString();
  }

  private static void add(StringJoiner members, String name, double value) {
    BigDecimal rounded = BigDecimal.valueOf(value).setScale(DECIMALS, RoundingMode.HALF_UP);
    members.add("\"" + name + "\": " + rounded.toPlainString());
  }
}
