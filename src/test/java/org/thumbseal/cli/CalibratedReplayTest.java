package org.thumbseal.cli;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.thumbseal.json.Canonical;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.node.ObjectNode;

/** A recording graded before and after its sensor was calibrated. */
class CalibratedReplayTest {
  private static final String TESTED = "2026-03-02T07:15:00Z";

  @TempDir private Path folder;
  private final MarginalPump exact = new MarginalPump(0, 0);
  private Path results;
  private Path key;

  @BeforeEach
  void place() {
    results = folder.resolve("results");
    key = folder.resolve("key/signing-key.pem");
  }

  private Answer calibrate(MarginalPump pump, Object... more) {
    List<Object> args =
        new ArrayList<>(
            List.of("calibrate", "--sensor", "SIM-01", "--reference", "RG-7", "--certificate"));
    args.addAll(List.of("C-2211", "--reference-uncertainty", "0.25 kPa", "--temperature", "24"));
    args.addAll(List.of("--results", results, "--key", key));
    for (double vacuum : new double[] {0, 30, 60, 85}) {
      args.addAll(List.of("--pair", pump.pair(vacuum)));
    }
    args.addAll(Arrays.asList(more));
    Answer answer = Answer.to(args.toArray());
    assertThat(answer.code()).as(answer.err()).isZero();
    return answer;
  }

  private ObjectNode graded(Path capture, Object... more) {
    List<Object> args = new ArrayList<>(List.of("replay", "--json", "--key", key, capture));
    args.addAll(Arrays.asList(more));
    return Answer.to(args.toArray()).onlyDocument();
  }

  private static JsonNode sensor(JsonNode document) {
    return document.at("/test/sensor/calibration");
  }

  private static double expanded(JsonNode document) {
    return document.at("/measurements/maximumVacuum/expandedUncertainty").doubleValue();
  }

  @Test
  void tooNearTheLimitUntilTheSensorIsCalibrated() throws Exception {
    Path capture = exact.record(folder, TESTED);
    ObjectNode before = graded(capture);

    assertThat(Answer.verdict(before)).isEqualTo("inconclusive");
    assertThat(Answer.reasons(before)).contains("near-limit");
    assertThat(before.at("/reasons/0/text").stringValue())
        .contains("limit of 80.0 kPa", "U of 1.0", "not calibrated", "thumbseal calibrate");
    assertThat(sensor(before).stringValue()).isEqualTo("uncalibrated");

    calibrate(exact, "--date", "2026-02-20");
    ObjectNode after = graded(capture, "--calibrations", results);

    assertThat(Answer.verdict(after)).isEqualTo("pass");
    assertThat(after.get("id")).isEqualTo(before.get("id"));
    assertThat(sensor(after).path("reference").stringValue()).isEqualTo("RG-7");
    assertThat(sensor(after).path("date").stringValue()).isEqualTo("2026-02-20");
    assertThat(sensor(after).path("due").stringValue()).isEqualTo("2027-02-20");
    assertThat(sensor(after).path("standing").stringValue()).isEqualTo("valid");
    assertThat(expanded(after)).isBetween(0.4, 1.0);
  }

  /** The sensor reads 2 % too little and its zero is off: the reading says 79.5 kPa. */
  @Test
  void theCalibratedResultIsRightWithinItsUncertainty() throws Exception {
    MarginalPump wrong = new MarginalPump(-0.02, 0.4);
    Path capture = wrong.record(folder, TESTED);
    ObjectNode before = graded(capture);
    calibrate(wrong, "--date", "2026-02-20");
    ObjectNode after = graded(capture, "--calibrations", results);
    double truth =
        Answer.measured(graded(exact.record(folder, "2026-03-03T07:15:00Z")), "maximumVacuum");

    assertThat(truth).isCloseTo(MarginalPump.REACHED, within(0.1));
    assertThat(Answer.measured(before, "maximumVacuum")).isCloseTo(0.98 * truth, within(0.05));
    assertThat(Answer.measured(after, "maximumVacuum")).isCloseTo(truth, within(0.05));
    assertThat(sensor(after).path("gain").doubleValue()).isCloseTo(1 / 0.98, within(0.0001));
    double timed = Answer.measured(after, "riseTime");
    assertThat(timed).isLessThan(Answer.measured(before, "riseTime"));
  }

  /** A calibration done after the test tells how the sensor was found. */
  @Test
  void calibratedTodayAndGradedAgain() throws Exception {
    Path capture = exact.record(folder, TESTED);
    calibrate(exact, "--date", "2026-03-09");
    ObjectNode after = graded(capture, "--calibrations", results);

    assertThat(Answer.verdict(after)).isEqualTo("pass");
    assertThat(sensor(after).path("note").stringValue()).contains("after the test");
  }

  @Test
  void resultsLookIntoTheirOwnDirectoryAndVerifyTakesAllOfIt() throws Exception {
    Path capture = exact.record(folder, TESTED);
    calibrate(exact, "--date", "2026-02-20");
    ObjectNode graded = graded(capture, "--results", results);

    assertThat(Answer.verdict(graded)).isEqualTo("pass");
    Answer verified = Answer.to("verify", results, "--key", key);
    assertThat(verified.out()).contains("2 documents and 1 capture in 1 chain", "nothing missing");
    assertThat(verified.code()).isZero();
    assertThat(new ResultFiles(results).files(".json"))
        .anyMatch(
            f ->
                f.getFileName()
                    .toString()
                    .matches("20260220T000000Z_SIM-01_calibration_[0-9a-f]{8}\\.json"));
  }

  @Test
  void anOverdueCalibrationIsUsedAndSaid() throws Exception {
    Path capture = exact.record(folder, TESTED);
    calibrate(exact, "--date", "2026-02-20");
    ObjectNode valid = graded(capture, "--calibrations", results);
    Path late = exact.record(folder, "2027-08-21T07:15:00Z");
    ObjectNode overdue = graded(late, "--calibrations", results);

    assertThat(sensor(overdue).path("standing").stringValue()).isEqualTo("overdue");
    assertThat(Answer.reasons(overdue)).contains("calibration-overdue");
    assertThat(Answer.reasons(valid)).doesNotContain("calibration-overdue");
    assertThat(expanded(overdue)).isGreaterThan(1.5 * expanded(valid));
  }

  @Test
  void aCalibrationWithABrokenOrAStrangersSealIsNotUsed() throws Exception {
    Path capture = exact.record(folder, TESTED);
    calibrate(exact, "--date", "2026-02-20");
    Answer stranger =
        Answer.to(
            "replay",
            "--json",
            "--key",
            folder.resolve("other.pem"),
            capture,
            "--calibrations",
            results);
    assertThat(sensor(stranger.onlyDocument()).stringValue()).isEqualTo("uncalibrated");
    assertThat(stranger.err()).contains("not used: good seal by an unknown key");

    Path document = new ResultFiles(results).documents().get(0);
    ObjectNode forged = ResultFiles.read(document);
    ((ObjectNode) forged.at("/reference/uncertainty")).put("expandedUncertainty", 0.01);
    Files.writeString(document, Canonical.text(forged) + "\n");
    Answer broken =
        Answer.to("replay", "--json", "--key", key, capture, "--calibrations", document);
    assertThat(sensor(broken.onlyDocument()).stringValue()).isEqualTo("uncalibrated");
    assertThat(broken.err()).contains("not used: broken seal");
  }

  @Test
  void whatIsNoCalibrationIsSaid() throws Exception {
    Path capture = exact.record(folder, TESTED);
    Answer noFile = Answer.to("replay", capture, "--calibrations", folder.resolve("none.json"));
    assertThat(noFile.code()).isEqualTo(2);
    assertThat(noFile.err()).contains("no such file");
    Path other = Files.writeString(folder.resolve("other.json"), "{\"kind\":\"correction\"}");
    Answer noCalibration = Answer.to("replay", capture, "--calibrations", other);
    assertThat(noCalibration.code()).isEqualTo(2);
    assertThat(noCalibration.err()).contains("is no calibration");
  }
}
