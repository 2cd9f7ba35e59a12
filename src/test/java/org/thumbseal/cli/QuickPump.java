package org.thumbseal.cli;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.time.Duration;
import java.util.Iterator;
import java.util.List;
import java.util.function.BooleanSupplier;
import java.util.function.DoublePredicate;
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
import org.thumbseal.simulate.SuctionLine;
import org.thumbseal.simulate.SuctionLine.Stretch;
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

  /** What is in the leaking path from the jar inlet on, jar and hoses, L. */
  static final String LITRES = "1.12";

  /** The same pump at the end of a suction path whose jar leaks 4 L/min. */
  private static final SuctionLine LEAKING =
      new SuctionLine(
          PLANT,
          List.of(
              new Stretch(0.06, 0, false),
              new Stretch(0.02, 4, true),
              new Stretch(0.2, 0, false),
              new Stretch(0.2, 0, false),
              new Stretch(0.2, 0, false)));

  private QuickPump() {}

  /** A test at a station of the leaking path, at whose end the pump is switched off. */
  static Scenario at(int station) {
    Script script = Script.quiet(4).pumpOn(8).block(16).release(9).pumpOff(3);
    return new Scenario(LEAKING.from(station), Sensor.ideal(100), Line.CLEAN, script, 1);
  }

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
    speak(pair, scenario(waits), untilSeconds);
  }

  /** The test of the sound pump, at whose end it is switched off. */
  static Scenario switchedOff() {
    Script script = Script.quiet(2).pumpOn(BLOCKED - 2).block(6).release(8).pumpOff(4);
    return new Scenario(PLANT, Sensor.ideal(100), Line.CLEAN, script, 1);
  }

  /** Lets the sensor of a pump that is off speak as long as somebody listens. */
  static void idle(PtyPair pair, BooleanSupplier listened) throws IOException {
    Script script = Script.quiet(200).pumpOn(1);
    Scenario scenario = new Scenario(PLANT, Sensor.ideal(100), Line.CLEAN, script, 1);
    speak(pair, scenario, seconds -> listened.getAsBoolean());
  }

  /** Lets the sensor speak the lines of a scenario in real time. */
  static void speak(PtyPair pair, Scenario scenario, double untilSeconds) throws IOException {
    speak(pair, scenario, seconds -> seconds <= untilSeconds);
  }

  private static void speak(PtyPair pair, Scenario scenario, DoublePredicate goOn)
      throws IOException {
    HostClock clock = HostClock.system();
    long began = clock.nanos();
    for (Iterator<TimedLine> lines = scenario.lines(); lines.hasNext(); ) {
      TimedLine line = lines.next();
      if (!goOn.test(line.hostMicros() / 1e6)) {
        return;
      }
      long wait = began + line.hostMicros() * 1_000 - clock.nanos();
      clock.pause(Duration.ofNanos(Math.max(0, wait)));
      pair.send((line.line() + "\n").getBytes(StandardCharsets.ISO_8859_1));
    }
  }
}
