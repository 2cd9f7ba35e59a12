package org.thumbseal.seek;

import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Random;
import org.thumbseal.capture.Capture;
import org.thumbseal.capture.CaptureHeader;
import org.thumbseal.capture.CaptureLine;
import org.thumbseal.json.JsonRefusedException;
import org.thumbseal.json.ResultTree;
import org.thumbseal.json.StationTestReader;
import org.thumbseal.pipeline.Grader;
import org.thumbseal.pipeline.GradingSettings;
import org.thumbseal.record.ResultDocument;
import org.thumbseal.simulate.Conditions;
import org.thumbseal.simulate.Plant;
import org.thumbseal.simulate.Scenario;
import org.thumbseal.simulate.Script;
import org.thumbseal.simulate.Simulation;
import org.thumbseal.simulate.SimulationKind;
import org.thumbseal.simulate.SuctionLine;
import org.thumbseal.simulate.SuctionLine.Stretch;
import org.thumbseal.simulate.Transducer;

/**
 * A search on a simulated pump: where the search asks for it a test is simulated, graded by the
 * pipeline from its lines, and its document read again. Pump, jar, place, sensor and line are drawn
 * as for a sound pump; on top of it a scale error of +-2.5 % common to all tests and a stated
 * volume that is off by up to 3 %, from test to test another zero, thumb and pump (0.15 kPa,
 * normal).
 */
final class SimulatedSearch {
  /** No stretch leaks. */
  static final int NONE = -1;

  /** No stretch leaks, and the valves of the pump are worn. */
  static final int WORN_PUMP = -2;

  private static final long SPREAD = 0x9E37_79B9_7F4A_7C15L;
  private static final double LARGEST_SCALE_ERROR = 0.025;

  /** As is reckoned with where a volume is given. */
  private static final double VOLUME_ERROR = 0.03;

  private static final double ZERO_MOVES_PASCALS = 100;
  private static final double THUMB_LEAK = 0.002;
  private static final int MOST_TESTS = 10;

  private final Random random;
  private final Scenario drawn;
  private final SuctionLine line;
  private final double leak;
  private final double litres;

  /**
   * A pump and its path.
   *
   * @param leaking the stretch that leaks, {@link #NONE} or {@link #WORN_PUMP}
   * @param seed of everything
   * @param hertz samples a second
   */
  SimulatedSearch(int leaking, long seed, double hertz) {
    // The first draws of neighbouring seeds are alike unless these are spread.
    this.random = new Random((16 * seed + leaking) * SPREAD);
    SimulationKind kind = leaking == WORN_PUMP ? SimulationKind.WORN_PUMP : SimulationKind.SOUND;
    Scenario sound = Simulation.of(kind, seed, rate(hertz));
    double gain = LARGEST_SCALE_ERROR * (2 * random.nextDouble() - 1);
    this.drawn = sound.with(sound.sensor().with(sound.sensor().transducer().gaining(gain)));
    double share = 0.02 * Math.pow(12.5, random.nextDouble());
    this.leak = leaking < 0 ? 0 : share * sound.plant().pump().litresPerMinute();
    SuctionLine tight = new SuctionLine(sound.plant(), stretches());
    this.line = leaking < 0 ? tight : tight.leaking(leaking, leak);
    double stated = 1 + VOLUME_ERROR * (2 * random.nextDouble() - 1);
    this.litres = stated * line.from(1).jar().litres();
  }

  private static Conditions rate(double hertz) {
    OptionalDouble drawn = OptionalDouble.empty();
    return new Conditions(drawn, drawn, OptionalDouble.of(hertz), drawn);
  }

  /** Two metres of tube, the jar's own joints, filter and hoses (common practice). */
  private static List<Stretch> stretches() {
    return List.of(
        new Stretch(0.06, 0, false),
        new Stretch(0.02, 0, true),
        new Stretch(0.05, 0, false),
        new Stretch(0.03, 0, false),
        new Stretch(0.05, 0, false));
  }

  /** What leaks in while choked, L/min. */
  double leak() {
    return leak;
  }

  /** The search to its end; of a test that does not count another is made. */
  SearchState run() {
    SearchState state = SearchState.of(SuctionPath.USUAL);
    for (int i = 0; i < MOST_TESTS && state.next() instanceof Step.Block block; i++) {
      Optional<StationTest> test = test(block.station());
      state = test.map(state::with).orElse(state);
    }
    return state;
  }

  private Optional<StationTest> test(int station) {
    List<ResultDocument> results =
        Grader.grade(
            capture(scenario(station)),
            Grader.Source.capture("record.log", "0".repeat(64)),
            GradingSettings.DEFAULT);
    return results.size() == 1 ? read(results.get(0), station) : Optional.empty();
  }

  private Optional<StationTest> read(ResultDocument result, int station) {
    try {
      boolean jar = SuctionPath.USUAL.hasJar(station);
      var place = new StationTestReader.Place(station, jar, Optional.of(litres));
      var source = new StationTest.Source(result.id(), "0".repeat(64), "record.json");
      return Optional.of(StationTestReader.read(ResultTree.of(result), source, place));
    } catch (JsonRefusedException e) {
      return Optional.empty();
    }
  }

  private Scenario scenario(int station) {
    Plant plant = today(line.from(station));
    double moved = ZERO_MOVES_PASCALS * (2 * random.nextDouble() - 1);
    Transducer transducer = drawn.sensor().transducer().shifted(moved);
    double tau = plant.jar().cubicMetres() / plant.pump().speed();
    Script script = Script.quiet(4).pumpOn(5).block(Math.max(8, 8 * tau)).release(3).pumpOff(3);
    return new Scenario(
        plant, drawn.sensor().with(transducer), drawn.line(), script, random.nextLong());
  }

  /** A thumb lets in a little, and the pump goes a little further or less far. */
  private Plant today(Plant plant) {
    double moved = 150 * random.nextGaussian() / plant.weather().pascals();
    double ultimate = Math.max(0.01, plant.pump().ultimateFraction() + moved);
    Plant other = plant.with(plant.pump().downTo(ultimate));
    SuctionLine thumb =
        new SuctionLine(
            other,
            List.of(
                new Stretch(
                    1e-6,
                    THUMB_LEAK * random.nextDouble() * other.pump().litresPerMinute(),
                    true)));
    return thumb.from(0);
  }

  private static Capture capture(Scenario scenario) {
    List<CaptureLine> lines = new ArrayList<>();
    scenario.lines().forEachRemaining(l -> lines.add(new CaptureLine(l.hostMicros(), l.line())));
    return new Capture(new CaptureHeader(Instant.EPOCH, Map.of()), lines, 0);
  }
}
