package org.thumbseal.trend;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import java.util.function.IntToDoubleFunction;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;

class TrendTest {
  private static final double MONTH = 30.4375;
  private static final TrendRules RULES = TrendRules.USUAL;
  private static final Limit RISE = new Limit(10, Limit.Side.ABOVE);

  /** Monthly, scatter 2 % of 7 s. */
  private static Series series(
      int count, long seed, IntToDoubleFunction course, Integer... changes) {
    Random random = new Random(seed);
    List<Reading> readings = new ArrayList<>();
    for (int i = 0; i < count; i++) {
      readings.add(
          new Reading(i * MONTH, course.applyAsDouble(i) + 0.14 * random.nextGaussian(), "s"));
    }
    return new Series(readings, List.of(changes).stream().map(m -> m * MONTH).toList());
  }

  @Test
  void wearIsATrendWithItsDates() {
    Trend trend = Trend.of(series(18, 1, i -> 7 + 0.1 * i), RULES);
    TrendLine line = trend.line().orElseThrow();

    assertThat(trend.steps()).isEmpty();
    assertThat(line.slope().value() * MONTH).isCloseTo(0.1, within(0.02));
    Crossing crossing = Crossing.of(line, RISE, 17 * MONTH, RULES).orElseThrow();
    assertThat(crossing.likeliest() / MONTH).isCloseTo(30, within(3.0));
    assertThat(crossing.earliest()).isLessThan(crossing.likeliest()).isGreaterThan(17 * MONTH);
  }

  @Test
  void fiveTestsSayNothing() {
    assertThat(Trend.of(series(5, 1, i -> 7 + i), RULES).silence()).contains(Silence.TOO_FEW);
    assertThat(Trend.of(series(6, 1, i -> 7 + i), RULES).line()).isPresent();
  }

  @Test
  void sixWeeklyTestsSayNothing() {
    List<Reading> weekly = new ArrayList<>();
    for (int i = 0; i < 6; i++) {
      weekly.add(new Reading(7 * i, 7 + 0.3 * i, "s"));
    }
    assertThat(Trend.of(new Series(weekly, List.of()), RULES).silence())
        .contains(Silence.TOO_SHORT);
  }

  @Test
  void testsOfOneVisitAreOne() {
    List<Reading> visits = new ArrayList<>();
    for (int i = 0; i < 5; i++) {
      for (int again = 0; again < 5; again++) {
        visits.add(new Reading(i * MONTH + again * 0.01, 7 + i, "s"));
      }
    }
    assertThat(Trend.of(new Series(visits, List.of()), RULES).silence()).contains(Silence.TOO_FEW);
  }

  @Test
  void aJumpIsNoTrendAndTheWaitBeginsAnew() {
    Trend trend = Trend.of(series(16, 2, i -> i < 12 ? 7 : 8.5), RULES);

    assertThat(trend.line()).isEmpty();
    assertThat(trend.silence()).contains(Silence.TOO_FEW);
    assertThat(trend.steps()).hasSize(1);
    Step step = trend.steps().get(0);
    assertThat(step.before() / MONTH).isCloseTo(11, within(1e-9));
    assertThat(step.after() / MONTH).isCloseTo(12, within(1e-9));
    assertThat(step.size()).isCloseTo(1.5, within(0.3));
    assertThat(step.known()).isFalse();
  }

  @Test
  void aReplacedPartIsAStepAtOnce() {
    Trend trend = Trend.of(series(13, 3, i -> i < 12 ? 7 + 0.2 * i : 7, 12), RULES);

    assertThat(trend.line()).isEmpty();
    assertThat(trend.steps()).hasSize(1);
    assertThat(trend.steps().get(0).known()).isTrue();
  }

  @Test
  void aReplacedPartThatChangedNothingDoesNotCutTheTrend() {
    Trend trend = Trend.of(series(18, 4, i -> 7 + 0.1 * i, 5, 9, 14), RULES);

    assertThat(trend.steps()).isEmpty();
    assertThat(trend.line().orElseThrow().base().tests()).isEqualTo(18);
  }

  @Test
  void wearThatBeganLateIsTakenFromWhereItBegan() {
    Trend trend = Trend.of(series(30, 5, i -> i < 18 ? 7 : 7 + 0.15 * (i - 18)), RULES);
    TrendLine line = trend.line().orElseThrow();

    assertThat(line.base().from() / MONTH).isBetween(15.0, 21.0);
    assertThat(line.slope().value() * MONTH).isCloseTo(0.15, within(0.03));
  }

  @Test
  void anotherSensorIsNoTrend() {
    Random random = new Random(6);
    List<Reading> readings = new ArrayList<>();
    for (int i = 0; i < 24; i++) {
      double offset = i < 12 ? 0 : 0.3;
      readings.add(
          new Reading(
              i * MONTH, 7 + offset + 0.1 * random.nextGaussian(), i < 12 ? "first" : "second"));
    }
    assertThat(Trend.of(new Series(readings, List.of()), RULES).line()).isEmpty();
  }

  @Test
  void sensorsByTurnsShowTheTrendOfThePump() {
    Random random = new Random(7);
    List<Reading> readings = new ArrayList<>();
    for (int i = 0; i < 24; i++) {
      double offset = 0.4 * (i % 3);
      readings.add(
          new Reading(i * MONTH, 7 + offset + 0.08 * i + 0.1 * random.nextGaussian(), "s" + i % 3));
    }
    Trend trend = Trend.of(new Series(readings, List.of()), RULES);

    assertThat(trend.steps()).isEmpty();
    assertThat(trend.line().orElseThrow().slope().value() * MONTH).isCloseTo(0.08, within(0.02));
  }

  @Test
  void aPumpAlreadyBeyondOrGettingBetterHasNoDate() {
    TrendLine worse = Trend.of(series(18, 8, i -> 9 + 0.1 * i), RULES).line().orElseThrow();
    TrendLine better = Trend.of(series(18, 8, i -> 9 - 0.1 * i), RULES).line().orElseThrow();

    assertThat(Crossing.of(worse, RISE, 17 * MONTH, RULES)).isEmpty();
    assertThat(Crossing.of(better, RISE, 17 * MONTH, RULES)).isEmpty();
  }

  @Test
  void beyondTheHorizonThereIsNoDate() {
    TrendLine slow = Trend.of(series(36, 9, i -> 6 + 0.03 * i), RULES).line().orElseThrow();

    assertThat(Crossing.of(slow, RISE, 35 * MONTH, RULES)).isEmpty();
  }

  @Test
  void vacuumThatFallsReachesItsLimitFromAbove() {
    TrendLine falling = Trend.of(series(18, 10, i -> 90 - 0.3 * i), RULES).line().orElseThrow();
    Crossing crossing =
        Crossing.of(falling, new Limit(80, Limit.Side.BELOW), 17 * MONTH, RULES).orElseThrow();

    assertThat(crossing.likeliest() / MONTH).isCloseTo(33.3, within(3.0));
    assertThat(crossing.earliest()).isLessThan(crossing.likeliest());
  }

  /** The flow of the Nile at Aswan, 1871 to 1970, in 1e8 m3; sum 91 935 as in R's data set. */
  private static final int[] NILE = {
    1120, 1160, 963, 1210, 1160, 1160, 813, 1230, 1370, 1140, 995, 935, 1110, 994, 1020, 960, 1180,
    799, 958, 1140, 1100, 1210, 1150, 1250, 1260, 1220, 1030, 1100, 774, 840, 874, 694, 940, 833,
    701, 916, 692, 1020, 1050, 969, 831, 726, 456, 824, 702, 1120, 1100, 832, 764, 821, 768, 845,
    864, 862, 698, 845, 744, 796, 1040, 759, 781, 865, 845, 944, 984, 897, 822, 1010, 771, 676, 649,
    846, 812, 742, 801, 1040, 860, 874, 848, 890, 744, 749, 838, 1050, 918, 986, 797, 923, 975, 815,
    1020, 906, 901, 1170, 912, 746, 919, 718, 714, 740
  };

  /** Cobb (Biometrika 65 (1978) 243) finds the change between 1898 and 1899, and no trend. */
  @Test
  void theNileJumpedAfter1898() {
    List<Reading> flow = new ArrayList<>();
    int sum = 0;
    for (int i = 0; i < NILE.length; i++) {
      flow.add(new Reading(365.25 * i, NILE[i], "gauge"));
      sum += NILE[i];
    }
    Trend trend = Trend.of(new Series(flow, List.of()), RULES);

    assertThat(sum).isEqualTo(91935);
    assertThat(trend.steps()).hasSize(1);
    assertThat(1871 + Math.round(trend.steps().get(0).before() / 365.25)).isEqualTo(1898);
    assertThat(trend.line()).isEmpty();
  }

  /** Monthly, calibrated every twelve months; U = 0.6 of each value. */
  private static List<Reading> yearly(int months, IntToDoubleFunction value) {
    return IntStream.range(0, months)
        .mapToObj(m -> new Reading(30.4 * m, value.applyAsDouble(m), "year " + m / 12, 0.6))
        .toList();
  }

  @Test
  void aRepairWithinTheYearOfACalibrationIsNoErrorOfTheSensor() {
    List<Reading> readings =
        yearly(36, m -> 91 - 0.7 * (m < 18 ? m : m - 18) + 0.2 * Math.sin(17.0 * m));
    Trend trend = Trend.of(new Series(readings, List.of(30.4 * 18)), TrendRules.USUAL);

    assertThat(trend.steps()).singleElement().matches(Step::known);
    assertThat(trend.line().orElseThrow().base().tests()).isEqualTo(18);
    assertThat(trend.line().orElseThrow().slope().value() * 30.4).isBetween(-0.75, -0.65);
  }

  @Test
  void aTrendIsNotHalvedByCalibrationsThatComeWithTheSeason() {
    IntToDoubleFunction course =
        m -> 6.5 + 0.09 * m + 0.25 * Math.sin(Math.PI * m / 6) + 0.03 * Math.sin(17.0 * m);
    Trend trend = Trend.of(new Series(yearly(36, course), List.of()), TrendRules.USUAL);
    assertThat(trend.line().orElseThrow().slope().value() * 30.4).isBetween(0.08, 0.1);
  }

  @Test
  void whatACalibrationMayHaveShiftedIsNoTrend() {
    Trend trend =
        Trend.of(
            new Series(
                yearly(36, m -> 0.35 * Math.floorDiv(m, 12) + 0.1 * Math.sin(17.0 * m)), List.of()),
            TrendRules.USUAL);
    assertThat(trend.steps()).isEmpty();
    assertThat(trend.line()).isEmpty();
  }
}
