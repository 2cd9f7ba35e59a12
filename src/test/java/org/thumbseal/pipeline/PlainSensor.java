package org.thumbseal.pipeline;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.thumbseal.capture.CaptureLine;
import org.thumbseal.simulate.Scenario;
import org.thumbseal.simulate.Simulation;
import org.thumbseal.simulate.SimulationKind;
import org.thumbseal.wire.Decoded;
import org.thumbseal.wire.LineDecoder;
import org.thumbseal.wire.WireRecord.Identity;
import org.thumbseal.wire.WireRecord.Reading;
import org.thumbseal.wire.WireRecord.Reference;

/** The same simulated pumps, read by a board that prints microseconds and kilopascals. */
public record PlainSensor(boolean timed, List<CaptureLine> lines) {
  /** The lines of a simulation, in the board's own words. */
  public static PlainSensor of(SimulationKind kind, long seed, boolean timed) {
    return of(Simulation.of(kind, seed), timed);
  }

  static PlainSensor of(Scenario scenario, boolean timed) {
    List<CaptureLine> lines = new ArrayList<>();
    boolean[] absolute = new boolean[1];
    scenario
        .lines()
        .forEachRemaining(
            line -> {
              if (LineDecoder.decode(line.line()) instanceof Decoded.Good good) {
                if (good.content() instanceof Identity who) {
                  absolute[0] = who.reference() == Reference.ABSOLUTE;
                } else if (good.content() instanceof Reading reading) {
                  lines.add(new CaptureLine(line.hostMicros(), text(reading, absolute[0], timed)));
                }
              }
            });
    return new PlainSensor(timed, lines);
  }

  /** A board that measures absolute pressure takes the standard atmosphere off: near enough. */
  private static String text(Reading reading, boolean absolute, boolean timed) {
    double kilopascals = (reading.pascals() - (absolute ? 101_325 : 0)) / 1_000.0;
    String pressure = String.format(Locale.ROOT, "%.2f", kilopascals);
    return timed ? reading.micros() + "," + pressure : pressure;
  }

  /** How to read them. */
  public String format() {
    return timed
        ? "lines:column=2,time=1:us,unit=kPa,sign=gauge"
        : "lines:column=1,unit=kPa,sign=gauge";
  }
}
