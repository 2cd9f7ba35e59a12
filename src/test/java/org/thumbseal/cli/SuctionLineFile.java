package org.thumbseal.cli;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.thumbseal.simulate.Line;
import org.thumbseal.simulate.Plant;
import org.thumbseal.simulate.Scenario;
import org.thumbseal.simulate.Script;
import org.thumbseal.simulate.Sensor;
import org.thumbseal.simulate.Simulation;
import org.thumbseal.simulate.SimulationKind;
import org.thumbseal.simulate.SuctionLine;
import org.thumbseal.simulate.SuctionLine.Stretch;

/** Lines of a sensor at one station of a suction path whose jar leaks 4 L/min. */
final class SuctionLineFile {
  private static final SuctionLine LEAKING =
      new SuctionLine(
          Simulation.of(SimulationKind.SOUND, 3).plant(),
          List.of(
              new Stretch(0.06, 0, false),
              new Stretch(0.02, 4, true),
              new Stretch(0.05, 0, false),
              new Stretch(0.03, 0, false),
              new Stretch(0.05, 0, false)));

  private SuctionLineFile() {}

  /** Writes the lines of one test. */
  static Path write(Path file, int station) throws IOException {
    Plant plant = LEAKING.from(station);
    Scenario scenario = new Scenario(plant, Sensor.ideal(50), Line.CLEAN, test(plant), 1);
    StringBuilder text = new StringBuilder();
    scenario.lines().forEachRemaining(l -> text.append(l.line()).append('\n'));
    return Files.writeString(file, text, StandardCharsets.ISO_8859_1);
  }

  private static Script test(Plant plant) {
    double tau = plant.jar().cubicMetres() / plant.pump().speed();
    return Script.quiet(5).pumpOn(6).block(Math.max(8, 7 * tau)).release(4).pumpOff(6);
  }

  /** What is in the path from the jar inlet on, L. */
  static double litres() {
    return LEAKING.from(1).jar().litres();
  }
}
