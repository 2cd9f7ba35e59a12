package org.thumbseal.cli;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import org.thumbseal.capture.Capture;
import org.thumbseal.capture.CaptureHeader;
import org.thumbseal.capture.CaptureLine;
import org.thumbseal.simulate.Circuit;
import org.thumbseal.simulate.Jar;
import org.thumbseal.simulate.Line;
import org.thumbseal.simulate.Plant;
import org.thumbseal.simulate.Pump;
import org.thumbseal.simulate.Scenario;
import org.thumbseal.simulate.Script;
import org.thumbseal.simulate.Sensor;
import org.thumbseal.simulate.Transducer;
import org.thumbseal.simulate.Weather;

/** A sound pump that reaches 81.1 kPa, read by a sensor with an error of its own. */
final class MarginalPump {
  /** Vacuum that the pump truly reaches, kPa: a fifth of the air is left. */
  static final double REACHED = 0.8 * 101.325;

  private static final Plant TIGHT =
      new Plant(Weather.atMetres(0), Jar.cylinder(2, 10), Pump.of(30, 0.2), Circuit.tight(0));

  private static final Plant PLANT = TIGHT.with(TIGHT.circuit().inlet(TIGHT.areaBalancedAt(400)));

  private final double gainError;
  private final double offset;

  /**
   * A sensor that reads {@code (1 + gainError) v + offset} kPa at a vacuum v.
   *
   * @param gainError as a share
   * @param offset kPa
   */
  MarginalPump(double gainError, double offset) {
    this.gainError = gainError;
    this.offset = offset;
  }

  /** A pair as it is typed, at a true vacuum. */
  String pair(double vacuum) {
    double read = (1 + gainError) * vacuum + offset;
    return String.format(java.util.Locale.ROOT, "%.3f=%.3f", read, vacuum);
  }

  /** Writes a recording of one test that began at a time; without one it bears a fixed date. */
  Path record(Path folder, String started) throws IOException {
    Transducer transducer = new Transducer(-1_000 * offset, gainError, 20, 0);
    Script script = Script.quiet(3).pumpOn(5).block(35).release(3);
    Scenario scenario =
        new Scenario(PLANT, Sensor.ideal(50).with(transducer), Line.CLEAN, script, 1);
    List<CaptureLine> lines = new ArrayList<>();
    scenario.lines().forEachRemaining(l -> lines.add(new CaptureLine(l.hostMicros(), l.line())));
    CaptureHeader header = new CaptureHeader(Instant.parse(started), Map.of("asset", "SP-014"));
    Path file = folder.resolve("marginal-" + started.substring(0, 10) + ".log");
    return Files.write(file, new Capture(header, lines, 0).format());
  }
}
