package org.thumbseal.seek;

import java.util.Optional;
import org.thumbseal.quantity.Quantity;
import org.thumbseal.seek.StationTest.Air;
import org.thumbseal.seek.StationTest.Source;
import org.thumbseal.seek.StationTest.Vacuum;

/** Tests as a sealed result tells of them, made of a plateau and what goes with it. */
final class Plateaus {
  static final double AMBIENT = 101.325;
  static final double LIMIT = 80;

  private Plateaus() {}

  /** With a sensor of which the scale is known to a share (standard uncertainty). */
  static StationTest at(int station, double kilopascals, double relative) {
    Level level = new Level(kilopascals, 0.02, new Level.Scale("tp-01", relative));
    Quantity stated = Quantity.kilopascals(kilopascals, Math.hypot(0.02, relative * kilopascals));
    return new StationTest(
        station,
        new Source("id-" + station, "0".repeat(64), "f.json"),
        new Vacuum(level, stated, LIMIT),
        new Air(AMBIENT, Optional.empty(), Optional.empty()));
  }

  /** With a calibrated sensor. */
  static StationTest at(int station, double kilopascals) {
    return at(station, kilopascals, 0.003);
  }

  /** The same with a pumping speed, L/min. */
  static StationTest pumping(StationTest test, double litresPerMinute, double error) {
    Air air = test.air();
    Quantity speed = new Quantity(litresPerMinute, "L/min", error);
    return new StationTest(
        test.station(),
        test.source(),
        test.vacuum(),
        new Air(air.ambient(), Optional.of(speed), air.decay()));
  }

  /** The same with a decay, mL/min. */
  static StationTest decaying(StationTest test, double millilitres, double error) {
    Air air = test.air();
    Quantity leak = new Quantity(millilitres, "mL/min", error);
    return new StationTest(
        test.station(),
        test.source(),
        test.vacuum(),
        new Air(air.ambient(), air.speed(), Optional.of(new StationTest.Decay(leak, true))));
  }

  /** A search of the usual path with these tests. */
  static SearchState search(StationTest... tests) {
    SearchState state = SearchState.of(SuctionPath.USUAL);
    for (StationTest test : tests) {
      state = state.with(test);
    }
    return state;
  }
}
