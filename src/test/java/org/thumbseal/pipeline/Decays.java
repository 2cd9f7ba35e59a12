package org.thumbseal.pipeline;

import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.thumbseal.capture.Capture;
import org.thumbseal.capture.CaptureHeader;
import org.thumbseal.capture.CaptureLine;
import org.thumbseal.measurement.Decay;
import org.thumbseal.record.ResultDocument;
import org.thumbseal.simulate.Scenario;

/** Decays of simulated recordings. */
final class Decays {
  private static final CaptureHeader HEADER =
      new CaptureHeader(Instant.parse("2026-03-02T07:15:00Z"), Map.of("source", "sim:decay"));

  private Decays() {}

  static Optional<Decay> of(Scenario scenario, GradingSettings settings) {
    return result(scenario, settings).flatMap(r -> r.measurement().orElseThrow().decay());
  }

  /** The first result of a recording. */
  static Optional<ResultDocument> result(Scenario scenario, GradingSettings settings) {
    List<CaptureLine> lines = new ArrayList<>();
    scenario
        .lines()
        .forEachRemaining(line -> lines.add(new CaptureLine(line.hostMicros(), line.line())));
    return Grader.grade(
            new Capture(HEADER, lines, 0), Grader.Source.capture("x.log", "0".repeat(64)), settings)
        .stream()
        .findFirst();
  }
}
