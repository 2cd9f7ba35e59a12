package org.thumbseal.cli;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.time.Duration;
import java.util.Iterator;
import org.thumbseal.link.HostClock;
import org.thumbseal.link.PtyPair;
import org.thumbseal.simulate.Circuit;
import org.thumbseal.simulate.Jar;
import org.thumbseal.simulate.Line;
import org.thumbseal.simulate.Plant;
import org.thumbseal.simulate.Pump;
import org.thumbseal.simulate.Scenario;
import org.thumbseal.simulate.Script;
import org.thumbseal.simulate.Sensor;
import org.thumbseal.simulate.TimedLine;
import org.thumbseal.simulate.Weather;

/**
 * A test that is over in 13 s of real time, for a small jar on a strong pump: not a faster clock
 * but a faster pump. The 65 kPa take 1.2 s, the maximum is reached within 5 s.
 */
final class QuickPump {
  /** Seconds after the first sample at which the inlet is blocked. */
  static final double BLOCKED = 5;

  private static final Plant TIGHT =
      new Plant(Weather.atMetres(0), Jar.cylinder(0.5, 10), Pump.of(30, 0.09), Circuit.tight(0));

  private static final Plant PLANT = TIGHT.with(TIGHT.circuit().inlet(TIGHT.areaBalancedAt(400)));

  private static final Waits SHORT = new Waits(2, BLOCKED - 2, 6);

  /**
   * How long the pump is off at first, and how long it runs before the inlet is blocked, and for
   * how long that is, s.
   */
  record Waits(double quiet, double open, double blocked) {
    private Script script() {
      return Script.quiet(quiet).pumpOn(open).block(blocked).release(2);
    }
  }

  private QuickPump() {}

  static Scenario scenario() {
    return scenario(SHORT);
  }

  private static Scenario scenario(Waits waits) {
    return new Scenario(PLANT, Sensor.ideal(100), Line.CLEAN, waits.script(), 1);
  }

  /** Lets the sensor speak in real time until a moment of the script, or to its end. */
  static void speak(PtyPair pair, double untilSeconds) throws IOException {
    speak(pair, SHORT, untilSeconds);
  }

  /** The same with other waits. */
  static void speak(PtyPair pair, Waits waits, double untilSeconds) throws IOException {
    HostClock clock = HostClock.system();
    long began = clock.nanos();
    for (Iterator<TimedLine> lines = scenario(waits).lines(); lines.hasNext(); ) {
      TimedLine line = lines.next();
      if (line.hostMicros() > untilSeconds * 1e6) {
        return;
      }
      long wait = began + line.hostMicros() * 1_000 - clock.nanos();
      clock.pause(Duration.ofNanos(Math.max(0, wait)));
      pair.send((line.line() + "\n").getBytes(StandardCharsets.ISO_8859_1));
    }
  }
}
