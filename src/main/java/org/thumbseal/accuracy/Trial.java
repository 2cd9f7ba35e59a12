package org.thumbseal.accuracy;

import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import org.thumbseal.capture.Capture;
import org.thumbseal.capture.CaptureHeader;
import org.thumbseal.capture.CaptureLine;
import org.thumbseal.pipeline.Grader;
import org.thumbseal.pipeline.GradingSettings;
import org.thumbseal.quantity.Quantity;
import org.thumbseal.record.ResultDocument;
import org.thumbseal.simulate.Scenario;

/**
 * One record that went through the pipeline, with what it really was.
 *
 * @param truth of the test in it
 * @param measured empty where not exactly one test was found
 */
record Trial(Truth truth, Optional<Measured> measured) {
  private static final String NO_FILE = "0".repeat(64);

  static Trial of(Scenario scenario, Truth truth) {
    return of(capture(scenario), truth);
  }

  static Trial of(Capture capture, Truth truth) {
    List<ResultDocument> results = graded(capture, truth.jarLitres());
    return new Trial(
        truth, results.size() == 1 ? Optional.of(Measured.of(results.get(0))) : Optional.empty());
  }

  static List<ResultDocument> graded(Capture capture, double jarLitres) {
    return graded(capture, settings(jarLitres));
  }

  static List<ResultDocument> graded(Capture capture, GradingSettings settings) {
    return Grader.grade(capture, Grader.Source.capture("record.log", NO_FILE), settings);
  }

  static Capture capture(Scenario scenario) {
    List<CaptureLine> lines = new ArrayList<>();
    scenario.lines().forEachRemaining(l -> lines.add(new CaptureLine(l.hostMicros(), l.line())));
    return new Capture(new CaptureHeader(Instant.EPOCH, Map.of()), lines, 0);
  }

  static GradingSettings settings(double jarLitres) {
    return jarLitres > 0
        ? GradingSettings.DEFAULT.withPump(p -> p.withJarLitres(jarLitres))
        : GradingSettings.DEFAULT;
  }

  /** Measured less true; empty where the one or the other does not exist. */
  OptionalDouble error(String name) {
    Optional<Quantity> found = measured.flatMap(m -> m.quantity(name));
    Optional<Double> real = truth.value(name);
    return found.isPresent() && real.isPresent()
        ? OptionalDouble.of(found.get().value() - real.get())
        : OptionalDouble.empty();
  }

  /** Error over expanded uncertainty: within 1 the stated interval holds the truth. */
  OptionalDouble share(String name) {
    OptionalDouble error = error(name);
    double expanded = measured.map(m -> m.expanded(name)).orElse(Double.NaN);
    return error.isPresent() ? OptionalDouble.of(error.getAsDouble() / expanded) : error;
  }
}
