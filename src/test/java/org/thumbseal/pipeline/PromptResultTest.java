package org.thumbseal.pipeline;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Instant;
import java.util.ArrayList;
import java.util.Iterator;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.thumbseal.capture.CaptureHeader;
import org.thumbseal.simulate.Scenario;
import org.thumbseal.simulate.Simulation;
import org.thumbseal.simulate.SimulationKind;
import org.thumbseal.simulate.TimedLine;

/**
 * Somebody stands there and waits: the promise is a sealed result within 1 s of the release. Here
 * is how much of it goes by, in simulated time, until the end of the test is seen; the rest is left
 * for grading, sealing and the disk.
 */
class PromptResultTest {
  private static final double SEEN_WITHIN = 0.65;

  @ParameterizedTest
  @ValueSource(longs = {1, 2, 3, 4, 5, 6, 7, 8, 9, 10, 11, 12})
  void theEndOfATestIsSeenAtOnce(long seed) {
    Scenario scenario = Simulation.of(SimulationKind.SOUND, seed);
    double released = scenario.truth().get(0).endedAt();
    List<Double> seen = new ArrayList<>();
    CaptureHeader header = new CaptureHeader(Instant.EPOCH, Map.of());
    double[] now = new double[1];
    LiveStream live = new LiveStream(header, new Heard(phase -> {}, capture -> seen.add(now[0])));
    for (Iterator<TimedLine> lines = scenario.lines(); lines.hasNext(); ) {
      TimedLine line = lines.next();
      now[0] = line.hostMicros() / 1e6;
      live.accept(line.hostMicros(), line.line());
    }
    assertThat(seen).hasSize(1);
    assertThat(seen.get(0) - released).isBetween(0.0, SEEN_WITHIN);
  }
}
