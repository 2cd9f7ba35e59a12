package org.thumbseal.calibration;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.random.RandomGenerator;
import java.util.random.RandomGeneratorFactory;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.thumbseal.calibration.AppliedCalibration.Timing;
import org.thumbseal.wire.WireRecord.Reference;

/**
 * A sensor that reads 2 % too much and is 0.4 kPa off, with errors drawn as the budget states them:
 * the interval must hold the truth as often as it says. The offset has wandered by another 0.3 kPa
 * before the test, which finds its own zero.
 */
class CalibrationCoverageTest {
  private static final int DRAWS = 4_000;
  private static final double GAIN = 1.02;

  @ParameterizedTest
  @ValueSource(ints = {2, 3, 6, 11})
  void theTruthIsInsideAsOftenAsStated(int points) throws Exception {
    RandomGenerator random =
        RandomGeneratorFactory.of("L64X128MixRandom").create(20260302 + points);
    for (double truth : new double[] {65, 81, 88}) {
      int inside = 0;
      double largest = 0;
      for (int i = 0; i < DRAWS; i++) {
        double off = error(points, truth, random);
        inside += off <= 1 ? 1 : 0;
        largest = Math.max(largest, off);
      }
      assertThat(inside / (double) DRAWS)
          .as("at %s kPa, %d points", truth, points)
          .isBetween(0.92, 0.99);
      assertThat(largest).as("errors were drawn at all").isGreaterThan(0.5);
    }
  }

  /** Size of the error of one corrected reading, in expanded uncertainties. */
  private static double error(int count, double truth, RandomGenerator random)
      throws CalibrationRefused {
    double bow = bow(count, random);
    AppliedCalibration applied =
        new AppliedCalibration(calibrated(count, bow, random), Timing.WITHIN, Reference.GAUGE);
    double drift = 1 + uniform(0.005, random);
    double zero = applied.corrected(0.7);
    double reading = applied.corrected(0.7 + drift * sensor(truth, bow));
    double off = Math.abs(reading - zero - truth);
    return off / (2 * applied.standardUncertainty(truth));
  }

  private static Calibration calibrated(int count, double bow, RandomGenerator random)
      throws CalibrationRefused {
    double low = Cases.GAUGE.standardUncertainty() * random.nextGaussian();
    double high = Cases.GAUGE.standardUncertainty() * random.nextGaussian();
    List<CalibrationPoint> points = new ArrayList<>();
    for (int i = 0; i < count; i++) {
      double truth = 1 + 85.0 * i / (count - 1);
      double reference = truth + low + (high - low) * (truth - 1) / 85;
      double read = uniform(CalibrationFacts.USUAL_REPEATABILITY, random);
      points.add(new CalibrationPoint(0.4 + sensor(truth, bow), Math.max(0, reference + read)));
    }
    return Calibration.of("x", Cases.facts(Cases.DAY), points);
  }

  private static double bow(int count, RandomGenerator random) {
    return count >= 5 ? 0 : uniform(0.0025 * 85, random);
  }

  /** What the sensor reads above its zero. */
  private static double sensor(double truth, double bow) {
    double x = truth / 86;
    return GAIN * truth + bow * 4 * x * (1 - x);
  }

  private static double uniform(double halfWidth, RandomGenerator random) {
    return halfWidth * (2 * random.nextDouble() - 1);
  }

  /** By how much the uncalibrated sensor would have been wrong. */
  @org.junit.jupiter.api.Test
  void withoutItTheReadingIsOffByTheGain() throws Exception {
    var calibration = Cases.of(Cases.DAY, "0.4=0", "82=80");
    var applied = new AppliedCalibration(calibration, Timing.WITHIN, Reference.GAUGE);
    double corrected = applied.corrected(0.4 + 81 * GAIN) - applied.corrected(0.4);

    assertThat(Math.abs(corrected - 81)).isLessThan(2 * applied.standardUncertainty(81));
    assertThat(2 * applied.standardUncertainty(81)).isLessThan(1);
    assertThat(81 * GAIN - 81).isGreaterThan(2 * applied.standardUncertainty(81));
    assertThat(Optional.of(calibration.asFound().error())).hasValue(2.0);
  }
}
