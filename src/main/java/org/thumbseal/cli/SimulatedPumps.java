package org.thumbseal.cli;

import java.util.Arrays;
import java.util.Iterator;
import java.util.stream.Collectors;
import org.thumbseal.link.LinkUnavailable;
import org.thumbseal.link.SimulatedSensor;
import org.thumbseal.simulate.Simulation;
import org.thumbseal.simulate.SimulationKind;

/** Plays the {@code sim:} addresses. */
final class SimulatedPumps implements SimulatedSensor {
  @Override
  public Iterator<TimedLine> lines(String kind, long seed) throws LinkUnavailable {
    SimulationKind found =
        SimulationKind.ofCode(kind)
            .orElseThrow(
                () ->
                    new LinkUnavailable(
                        LinkUnavailable.Reason.UNKNOWN,
                        "no simulation '" + kind + "'; there are " + kinds()));
    var lines = Simulation.of(found, seed).lines();
    return new Iterator<>() {
      @Override
      public boolean hasNext() {
        return lines.hasNext();
      }

      @Override
      public TimedLine next() {
        var line = lines.next();
        return new TimedLine(line.hostMicros(), line.line());
      }
    };
  }

  private static String kinds() {
    return Arrays.stream(SimulationKind.values())
        .map(SimulationKind::code)
        .collect(Collectors.joining(", "));
  }
}
