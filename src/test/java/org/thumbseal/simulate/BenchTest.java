package org.thumbseal.simulate;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import org.thumbseal.simulate.Act.Connect;

/** Pump, jar and hands in time. */
class BenchTest {
  private static final Weather ROOM = new Weather(101_325, 20);

  private static Plant plant(double litres, double openPascals) {
    Plant closed = new Plant(ROOM, Jar.cylinder(litres, 10), Pump.of(30, 0.1), Circuit.tight(0));
    return closed.with(closed.circuit().inlet(closed.areaBalancedAt(openPascals)));
  }

  private static Bench at(Plant plant, Script script, double seconds) {
    Bench bench = new Bench(plant, script);
    bench.advance(seconds);
    return bench;
  }

  /** The inlet is sized for an open vacuum; small jars with wide inlets are the stiffest. */
  @ParameterizedTest
  @CsvSource({"0.3, 20", "0.3, 600", "2, 20", "2, 200", "5, 600", "2, 20000"})
  void openVacuumIsWhatTheInletIsSizedFor(double litres, double pascals) {
    Script script = Script.quiet(1).pumpOn(30);

    assertThat(at(plant(litres, pascals), script, 30).vacuum())
        .isCloseTo(pascals, within(1e-3 * pascals));
  }

  @Test
  void nothingMovesBeforeThePumpIsOn() {
    assertThat(at(plant(2, 200), Script.quiet(3).pumpOn(1), 2.999).vacuum()).isZero();
  }

  @Test
  void pumpThatRanBeforeTheRecordingHasItsOpenVacuumFromTheStart() {
    assertThat(at(plant(2, 200), Script.running(5), 0).vacuum()).isCloseTo(200, within(0.1));
  }

  /**
   * How finely it is asked for the pressure does not change the pressure: by far less than the 1 Pa
   * of the wire, and that much because the spinning motor is followed in steps.
   */
  @ParameterizedTest
  @ValueSource(doubles = {0.0007, 0.01, 0.0999, 1})
  void askingOftenChangesNothing(double stride) {
    Script script = Script.quiet(1).pumpOn(3).block(8).release(4).pumpOff(3);
    Bench often = new Bench(plant(2, 200), script);
    for (int i = 1; i * stride <= 9; i++) {
      often.advance(i * stride);
    }
    often.advance(9);

    assertThat(often.vacuum()).isCloseTo(at(plant(2, 200), script, 9).vacuum(), within(1e-3));
  }

  /** A control that lets air in holds its vacuum, with a knee: on the way there nothing differs. */
  @Test
  void controlHoldsItsVacuumAndLeavesTheRiseAlone() {
    Plant free = plant(2, 200);
    Plant held = free.with(free.circuit().relievedAt(70_000));
    Script script = Script.running(0).block(60);

    assertThat(at(held, script, 5).vacuum()).isEqualTo(at(free, script, 5).vacuum());
    assertThat(at(held, script, 60).vacuum()).isBetween(70_000.0, 70_600.0);
    assertThat(at(free, script, 60).vacuum()).isCloseTo(0.9 * 101_325, within(30.0));
  }

  /** A laminar filter hardly matters at first and slows the end: 1/t, not exponential. */
  @Test
  void filterMakesTheTailSlowerThanExponential() {
    Plant free = plant(2, 200);
    double conductance = 2 * free.pump().speed() / ROOM.pascals();
    Plant filtered = free.with(free.circuit().filtered(conductance));
    Script script = Script.running(0).block(60);

    double early = at(filtered, script, 1).vacuum() / at(free, script, 1).vacuum();
    double lateFree = 91_192.5 - at(free, script, 16).vacuum();
    double lateFiltered = 91_192.5 - at(filtered, script, 16).vacuum();
    assertThat(early).isBetween(0.5, 0.85);
    assertThat(lateFiltered).isGreaterThan(5 * lateFree);
  }

  /**
   * Source: stroke volume over jar volume times pressure; 30 L/min in a 2 L jar is 0.53 kPa at
   * atmosphere and 0.10 kPa at 20 kPa absolute for 48 strokes a second, twice that for 24.
   */
  @ParameterizedTest
  @CsvSource({"48, 0.53, 0.10", "24, 1.06, 0.21"})
  void strokeRippleFallsWithThePressure(double hertz, double atStart, double atTwenty) {
    Plant plant = plant(2, 20).with(Pump.of(30, 0.1).at(hertz));
    Bench bench = at(plant, Script.running(0).block(60), 0);
    double start = bench.strokeSwing();
    for (double time = 0; bench.pascals() > 20_000; time += 0.01) {
      bench.advance(time);
    }

    assertThat(start / 1_000).isCloseTo(atStart, within(0.006));
    assertThat(bench.strokeSwing() / 1_000).isCloseTo(atTwenty, within(0.006));
  }

  @Test
  void rippleIsZeroInTheMeanAndGoneWhenThePumpStops() {
    Bench bench = at(plant(2, 200), Script.running(0).block(60).pumpOff(10), 55);
    double sum = 0;
    double highest = 0;
    for (int i = 1; i <= 1_000; i++) {
      bench.advance(55 + i * 1e-3);
      sum += bench.ripple();
      highest = Math.max(highest, bench.ripple());
    }
    bench.advance(62);

    assertThat(highest).isGreaterThan(30);
    assertThat(sum / 1_000).isCloseTo(0, within(0.1));
    assertThat(bench.ripple()).isZero();
  }

  @Test
  void restingValvesLetTheVacuumDecay() {
    Plant tight = plant(2, 200).with(Jar.cylinder(2, Double.POSITIVE_INFINITY));
    Plant worn = tight.with(tight.pump().leakingAtRest(1e-7));
    Script script = Script.running(0).block(40).pumpOff(30);
    double fallTight = at(tight, script, 50).vacuum() - at(tight, script, 70).vacuum();
    double fallWorn = at(worn, script, 50).vacuum() - at(worn, script, 70).vacuum();

    // Choked: 198.63 m/s x 1e-7 m2 x 101 325 Pa / 2 L = 1006 Pa/s.
    assertThat(fallTight).isZero();
    assertThat(fallWorn).isCloseTo(20_127, within(10.0));
  }

  @Test
  void connectingAnotherPlantStartsAtRest() {
    Script script = Script.running(0).block(20).then(new Connect(plant(1, 100)), 5).pumpOn(20);
    Bench bench = at(plant(2, 200), script, 24);
    assertThat(bench.vacuum()).isZero();

    bench.advance(45);
    assertThat(bench.vacuum()).isCloseTo(100, within(0.1));
  }
}
