package org.thumbseal.simulate;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.thumbseal.simulate.Act.PressKey;
import org.thumbseal.simulate.Act.ReportFault;
import org.thumbseal.simulate.Act.RestartSensor;
import org.thumbseal.wire.Decoded;
import org.thumbseal.wire.LineDecoder;
import org.thumbseal.wire.WireRecord;
import org.thumbseal.wire.WireRecord.Ambient;
import org.thumbseal.wire.WireRecord.Fault;
import org.thumbseal.wire.WireRecord.Identity;
import org.thumbseal.wire.WireRecord.Reading;
import org.thumbseal.wire.WireRecord.Reference;
import org.thumbseal.wire.WireRecord.StartKey;

/** What the sensor says of a known pressure. */
class SensorLinesTest {
  private static final double HERTZ = 100;
  private static final Plant PLANT = plant();

  private static Plant plant() {
    Weather room = new Weather(101_325, 20);
    Plant closed = new Plant(room, Jar.cylinder(2, 10), Pump.of(20, 0.1), Circuit.tight(0));
    return closed.with(closed.circuit().inlet(closed.areaBalancedAt(200)));
  }

  private static Scenario of(Sensor sensor, Script script) {
    return new Scenario(PLANT, sensor, Line.CLEAN, script, 1);
  }

  private static List<WireRecord> records(Scenario scenario) {
    List<WireRecord> records = new ArrayList<>();
    scenario.lines().forEachRemaining(line -> records.add(record(line.line())));
    return records;
  }

  private static WireRecord record(String line) {
    assertThat(LineDecoder.decode(line)).as(line).isInstanceOf(Decoded.Good.class);
    return ((Decoded.Good) LineDecoder.decode(line)).content();
  }

  private static <T extends WireRecord> List<T> only(Class<T> type, Scenario scenario) {
    return records(scenario).stream().filter(type::isInstance).map(type::cast).toList();
  }

  @Test
  void introducesItselfAtOnceAndEveryTwoSeconds() {
    List<WireRecord> records = records(of(Sensor.ideal(HERTZ), Script.quiet(5)));

    assertThat(records.get(0))
        .isEqualTo(new Identity("SIM-01", "1.0.0", Reference.GAUGE, -115_000, 15_000, HERTZ));
    assertThat(records.get(1)).isInstanceOf(Ambient.class);
    assertThat(records.get(2)).isEqualTo(new Reading(0, 0, 0));
    assertThat(records.stream().filter(Identity.class::isInstance)).hasSize(3);
    assertThat(records.stream().filter(Reading.class::isInstance)).hasSize(501);
  }

  /** An ideal sensor's own samples show the truth that is stated beside them. */
  @Test
  void idealSamplesAgreeWithTheTruth() {
    Plant smooth = PLANT.with(PLANT.pump().at(1e9));
    Scenario scenario = of(Sensor.ideal(1000), Script.running(3).block(30).release(2)).with(smooth);
    List<Reading> readings = only(Reading.class, scenario);
    TestTruth truth = scenario.truth().get(0);

    double open = mean(readings, 1.0, 3.0);
    assertThat(open).isCloseTo(truth.openVacuum(), within(1e-3));
    assertThat(truth.occludedAt()).isEqualTo(3);
    assertThat(truth.endedAt()).isEqualTo(33);
    double limit = -65_000 - 1_000 * open;
    Reading first = readings.stream().filter(r -> r.pascals() <= limit).findFirst().orElseThrow();
    assertThat(first.micros() * 1e-6 - 3).isCloseTo(truth.riseTime().orElseThrow(), within(2e-3));
    assertThat(mean(readings, 32.0, 33.0))
        .isCloseTo(truth.maximumVacuum().orElseThrow(), within(2e-3));
  }

  private static double mean(List<Reading> readings, double from, double until) {
    return readings.stream()
        .filter(r -> r.micros() >= from * 1e6 && r.micros() < until * 1e6)
        .mapToDouble(r -> -r.pascals() / 1e3)
        .average()
        .orElseThrow();
  }

  @Test
  void counterAndClockWrap() {
    Ticks ticks = new Ticks((1L << 32) - 3, (1L << 32) - 20_000, 0, 0);
    List<Reading> readings =
        only(Reading.class, of(Sensor.ideal(HERTZ).with(ticks), Script.quiet(0.05)));

    assertThat(readings)
        .extracting(Reading::counter)
        .containsExactly(4294967293L, 4294967294L, 4294967295L, 0L, 1L, 2L);
    assertThat(readings)
        .extracting(Reading::micros)
        .containsExactly(4294947296L, 4294957296L, 0L, 10_000L, 20_000L, 30_000L);
  }

  /** A fast clock samples sooner and says otherwise: its own seconds stay whole. */
  @Test
  void clockErrorShowsInTheArrivalAlone() {
    Sensor fast = Sensor.ideal(HERTZ).with(new Ticks(0, 0, 0.01, 0));
    List<TimedLine> lines = new ArrayList<>();
    of(fast, Script.quiet(20)).lines().forEachRemaining(lines::add);
    TimedLine last = lines.get(lines.size() - 1);

    assertThat(record(last.line())).isEqualTo(new Reading(2020, 20_200_000, 0));
    assertThat(last.hostMicros()).isBetween(20_000_000L, 20_010_000L);
  }

  @Test
  void jitterIsInTheStampsAndNeverReordersThem() {
    Sensor sensor = Sensor.ideal(HERTZ).with(new Ticks(0, 0, 0, 0.02));
    List<Reading> readings = only(Reading.class, of(sensor, Script.quiet(20)));

    for (int i = 1; i < readings.size(); i++) {
      long step = readings.get(i).micros() - readings.get(i - 1).micros();
      assertThat(step).isBetween(2_000L, 18_000L);
    }
    assertThat(readings.stream().filter(r -> r.micros() % 10_000 != 0).count()).isGreaterThan(1000);
  }

  @Test
  void errorsOfTheTransducerAreThoseAsked() {
    Transducer transducer = new Transducer(250, 0.01, 100, 56);
    List<Reading> readings =
        only(Reading.class, of(Sensor.ideal(HERTZ).with(transducer), Script.quiet(100)));
    double mean = readings.stream().mapToDouble(Reading::pascals).average().orElseThrow();
    double square =
        readings.stream()
            .mapToDouble(r -> StrictMath.pow(r.pascals() - mean, 2))
            .average()
            .orElseThrow();

    // 10 000 readings: standard error of the mean 1 Pa, of the rms 0.7 Pa; step adds 56/sqrt(12).
    assertThat(mean).isCloseTo(250, within(5.0));
    assertThat(Math.sqrt(square)).isCloseTo(Math.sqrt(100 * 100 + 56 * 56 / 12.0), within(3.5));
    assertThat(readings).allSatisfy(r -> assertThat(r.pascals() % 56).isZero());
  }

  @Test
  void gainErrorScalesTheVacuum() {
    Script script = Script.running(1).block(30);
    Sensor gained = Sensor.ideal(HERTZ).with(new Transducer(0, 0.02, 0, 0));
    List<Reading> right = only(Reading.class, of(Sensor.ideal(HERTZ), script));
    List<Reading> wrong = only(Reading.class, of(gained, script));

    int last = right.size() - 1;
    assertThat(wrong.get(last).pascals())
        .isCloseTo((int) Math.round(1.02 * right.get(last).pascals()), within(1));
  }

  @ParameterizedTest
  @ValueSource(ints = {-80_000, -40_000})
  void rangeClips(int low) {
    Identity narrow = new Identity("N-1", "2", Reference.GAUGE, low, 15_000, HERTZ);
    List<Reading> readings =
        only(Reading.class, of(Sensor.ideal(HERTZ).with(narrow), Script.running(1).block(40)));

    assertThat(readings.get(readings.size() - 1).pascals()).isEqualTo(low);
  }

  @Test
  void absoluteSensorReadsAmbientAtRest() {
    Identity absolute = new Identity("ABS", "1", Reference.ABSOLUTE, 0, 120_000, HERTZ);
    List<Reading> readings =
        only(Reading.class, of(Sensor.ideal(HERTZ).with(absolute), Script.quiet(1)));

    assertThat(readings).allSatisfy(r -> assertThat(r.pascals()).isEqualTo(101_325));
  }

  @Test
  void spikesAreRareAndSingle() {
    Sensor spiky = Sensor.ideal(HERTZ).with(new Upsets(0.01, 5_000, 0, 1));
    List<Reading> readings = only(Reading.class, of(spiky, Script.quiet(200)));
    long spikes = readings.stream().filter(r -> r.pascals() != 0).count();

    // 20 001 draws of 1 %: 200 with a standard deviation of 14.
    assertThat(spikes).isBetween(140L, 260L);
  }

  @Test
  void keyAndFaultCarryTheirOwnTime() {
    Script script =
        Script.quiet(3)
            .with(1.2345, new PressKey(true))
            .with(1.5, new PressKey(false))
            .with(2.0001, new ReportFault("ADC"));
    Scenario scenario = of(Sensor.ideal(HERTZ), script);

    assertThat(only(StartKey.class, scenario))
        .containsExactly(new StartKey(1_234_500, true), new StartKey(1_500_000, false));
    assertThat(only(Fault.class, scenario)).containsExactly(new Fault(2_000_100, "ADC"));
  }

  @Test
  void restartBeginsAnewAfterADarkTime() {
    Script script = Script.quiet(10).with(4, new RestartSensor(1.5));
    Sensor sensor = Sensor.ideal(HERTZ).with(new Ticks(500, 9_000_000, 0, 0));
    List<WireRecord> records = records(of(sensor, script));
    int before = records.indexOf(new Reading(500 + 399, 9_000_000 + 3_990_000, 0));

    assertThat(records.subList(before + 1, before + 4))
        .satisfiesExactly(
            r -> assertThat(r).isInstanceOf(Identity.class),
            r -> assertThat(r).isInstanceOf(Ambient.class),
            r -> assertThat(r).isEqualTo(new Reading(0, 412_000, 0)));
    assertThat(records.stream().filter(Reading.class::isInstance).count()).isEqualTo(400 + 451);
  }
}
