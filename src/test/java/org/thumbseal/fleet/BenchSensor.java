package org.thumbseal.fleet;

import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Random;
import org.thumbseal.calibration.Calibration;
import org.thumbseal.calibration.CalibrationFacts;
import org.thumbseal.calibration.CalibrationPoint;
import org.thumbseal.calibration.CalibrationRefused;
import org.thumbseal.calibration.ReferenceGauge;
import org.thumbseal.json.CalibrationTree;
import org.thumbseal.json.Canonical;
import org.thumbseal.record.ResultId;
import org.thumbseal.seal.Sha256;
import org.thumbseal.simulate.Sensor;
import org.thumbseal.simulate.Ticks;
import org.thumbseal.simulate.Transducer;
import org.thumbseal.simulate.Upsets;
import org.thumbseal.wire.WireRecord.Identity;
import org.thumbseal.wire.WireRecord.Reference;

/**
 * A sensor of the workshop: gain 1 % standard deviation, drifting by 0.1 % a year (assumed), held
 * against a gauge of U = 0.25 kPa once a year.
 */
final class BenchSensor {
  private static final double HERTZ = 50;

  private final String id;
  private final Random random;
  private final double gain;
  private final double drift;
  private double gaugeError;

  BenchSensor(String id, Random random) {
    this.id = id;
    this.random = random;
    gain = 0.01 * random.nextGaussian();
    drift = 0.001 * random.nextGaussian();
  }

  /** As it reads in a month; its zero wanders. */
  Sensor on(double month) {
    Identity identity = new Identity(id, "1.0.0", Reference.GAUGE, -115_000, 15_000, HERTZ);
    double zero = 150 * random.nextGaussian();
    Transducer transducer = new Transducer(zero, error(month), 60, 10);
    Ticks ticks = new Ticks(random.nextInt(1_000), 1_200_345, 2e-5, 5e-5);
    return new Sensor(identity, transducer, Upsets.NONE, ticks, true);
  }

  private double error(double month) {
    return gain + drift * month / 12;
  }

  /** What a year's calibration finds. */
  Calibration calibrated(Instant at, double month) throws CalibrationRefused {
    gaugeError = 0.0015 * random.nextGaussian();
    List<CalibrationPoint> points = new ArrayList<>();
    for (double truth : List.of(0.0, 20.0, 40.0, 60.0, 85.0)) {
      double read = truth * (1 + error(month)) + 0.05 * random.nextGaussian();
      double shown = Math.max(0, truth * (1 + gaugeError));
      points.add(
          new CalibrationPoint(CalibrationTree.rounded(read), CalibrationTree.rounded(shown)));
    }
    LocalDate day = at.atZone(ZoneOffset.UTC).toLocalDate();
    CalibrationFacts facts =
        new CalibrationFacts(
            id,
            at,
            day.plusYears(1),
            new ReferenceGauge("RG-7", "C-22" + day.getYear() % 100, 0.25, 2),
            CalibrationFacts.USUAL_REPEATABILITY,
            Optional.of(24.0),
            Optional.of("N. Osei"));
    String digest = Sha256.hex(Canonical.bytes(CalibrationTree.said(facts, points)));
    return Calibration.of(ResultId.of(digest, 1), facts, points);
  }
}
