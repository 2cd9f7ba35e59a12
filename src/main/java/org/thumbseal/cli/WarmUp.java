package org.thumbseal.cli;

import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import org.thumbseal.capture.Capture;
import org.thumbseal.capture.CaptureLine;
import org.thumbseal.json.ResultTree;
import org.thumbseal.pipeline.Grader;
import org.thumbseal.pipeline.GradingSettings;
import org.thumbseal.record.ResultDocument;
import org.thumbseal.seal.ChainEnd;
import org.thumbseal.seal.Seal;
import org.thumbseal.seal.Sha256;
import org.thumbseal.seal.SigningKey;
import org.thumbseal.simulate.Conditions;
import org.thumbseal.simulate.Scenario;
import org.thumbseal.simulate.Simulation;
import org.thumbseal.simulate.SimulationKind;

/**
 * Grades and seals a simulated test once and throws it away, while nobody waits. Without it the
 * first real result of the day would wait until Java has loaded all that is needed for that, which
 * on a small board takes longer than the second in which it is promised.
 */
final class WarmUp {
  private static final Conditions SHORT =
      new Conditions(
          OptionalDouble.empty(),
          OptionalDouble.empty(),
          OptionalDouble.of(20),
          OptionalDouble.empty());

  private WarmUp() {}

  /** Begins, and returns at once. */
  static Thread start() {
    Thread thread = new Thread(WarmUp::run, "warm-up");
    thread.setDaemon(true);
    thread.start();
    return thread;
  }

  private static void run() {
    SigningKey key = SigningKey.generate();
    ChainEnd nothing = ChainEnd.none(key.verifyingKey().kid());
    for (ResultDocument result : results()) {
      Seal.seal(ResultTree.of(result), nothing.next(), key);
    }
  }

  /** What a sound pump gives. */
  static List<ResultDocument> results() {
    Capture capture = capture(Simulation.of(SimulationKind.SOUND, 1, SHORT));
    Grader.Source source = Grader.Source.capture("warm-up", Sha256.hex(capture.format()));
    return Grader.grade(capture, source, GradingSettings.DEFAULT);
  }

  private static Capture capture(Scenario scenario) {
    List<CaptureLine> lines = new ArrayList<>();
    scenario.lines().forEachRemaining(l -> lines.add(new CaptureLine(l.hostMicros(), l.line())));
    return new Capture(
        new SimulatedHeader(SimulationKind.SOUND, scenario, null).at(null), lines, 0);
  }
}
