package org.thumbseal.cli;

import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import org.thumbseal.capture.Capture;
import org.thumbseal.capture.CaptureLine;
import org.thumbseal.json.ResultTree;
import org.thumbseal.link.HostClock;
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
 * Grades and seals simulated tests and throws them away, while nobody waits. Without it the first
 * real result of the day would wait until Java has loaded all that is needed for that, which on a
 * small board takes longer than the second in which it is promised; and Java compiles what is slow
 * only after it has run many times, so the next results would still be late.
 */
final class WarmUp {
  /** After so many, a result takes a quarter of the time of the second one. */
  private static final int ROUNDS = 40;

  /** Sound, leaking and worn pumps do not go the same ways through the program. */
  private static final List<SimulationKind> KINDS =
      List.of(SimulationKind.SOUND, SimulationKind.LEAK, SimulationKind.WORN_PUMP);

  private static final int REST = 3;
  private static final double FIRST_RATE = 20;
  private static final double USUAL_RATE = 100;

  private final HostClock clock;
  private final SigningKey key = SigningKey.generate();

  WarmUp(HostClock clock) {
    this.clock = clock;
  }

  /** Begins, and returns at once. */
  static Thread start() {
    Thread thread = new Thread(() -> new WarmUp(HostClock.system()).run(ROUNDS), "warm-up");
    thread.setDaemon(true);
    thread.start();
    return thread;
  }

  /** Leaves the processor to others for three times as long as each round took. */
  void run(int rounds) {
    for (int round = 0; round < rounds; round++) {
      long began = clock.nanos();
      seal(results(round));
      clock.pause(Duration.ofNanos(REST * (clock.nanos() - began)));
    }
  }

  private void seal(List<ResultDocument> results) {
    ChainEnd nothing = ChainEnd.none(key.verifyingKey().kid());
    results.forEach(result -> Seal.seal(ResultTree.of(result), nothing.next(), key));
  }

  /** What the pump of a round gives; that of the first, with few samples, gives it soonest. */
  static List<ResultDocument> results(int round) {
    SimulationKind kind = KINDS.get(round % KINDS.size());
    double rate = round == 0 ? FIRST_RATE : USUAL_RATE;
    Capture capture = capture(kind, Simulation.of(kind, 1 + round, conditions(rate)));
    Grader.Source source = Grader.Source.capture("warm-up", Sha256.hex(capture.format()));
    return Grader.grade(capture, source, GradingSettings.DEFAULT);
  }

  private static Conditions conditions(double rate) {
    return new Conditions(
        OptionalDouble.empty(),
        OptionalDouble.empty(),
        OptionalDouble.of(rate),
        OptionalDouble.empty());
  }

  private static Capture capture(SimulationKind kind, Scenario scenario) {
    List<CaptureLine> lines = new ArrayList<>();
    scenario.lines().forEachRemaining(l -> lines.add(new CaptureLine(l.hostMicros(), l.line())));
    return new Capture(new SimulatedHeader(kind, scenario, null).at(null), lines, 0);
  }
}
