package org.thumbseal.grade;

import java.util.List;
import java.util.Optional;
import org.thumbseal.measurement.AmbientPressure;
import org.thumbseal.measurement.Budgeted;
import org.thumbseal.measurement.Contribution;
import org.thumbseal.measurement.Measurement;
import org.thumbseal.measurement.Quality;
import org.thumbseal.measurement.Quality.Clock;
import org.thumbseal.measurement.Quality.Start;
import org.thumbseal.measurement.Quality.Zero;
import org.thumbseal.measurement.SensorCalibration;
import org.thumbseal.phase.Ending;

/** A measurement filled in by hand: a sound pump, but for what a test writes over it. */
final class Sheet {
  double open = 0.2;
  double rise = 8;
  double riseUncertainty = 0.2;
  double maximum = 90;
  double maximumUncertainty = 1;
  boolean risen = true;
  boolean measured = true;
  Optional<AmbientPressure> ambient = Optional.empty();
  Ending ending = Ending.RELEASED;
  Start start = Start.STEADY;
  double blocked = 30;
  double finalSlope;
  double reachable = 90;
  Optional<Double> slip = Optional.empty();
  double gap;
  boolean clipped;
  List<String> faults = List.of();
  Zero zero = new Zero(0.1, 0.01, "quiet start", Optional.of(0.05), true);
  Clock clock = new Clock(1, 1e-5, true);

  static Sheet sound() {
    return new Sheet();
  }

  Measurement measurement() {
    return new Measurement(
        budgeted(9, "s", 0.01),
        budgeted(open, "kPa", 0.05),
        65,
        risen ? Optional.of(budgeted(rise, "s", riseUncertainty)) : Optional.empty(),
        measured ? Optional.of(budgeted(maximum, "kPa", maximumUncertainty)) : Optional.empty(),
        maximum - open,
        Optional.empty(),
        Optional.empty(),
        Optional.empty(),
        ambient,
        List.of(),
        quality(),
        SensorCalibration.none(),
        Optional.empty());
  }

  private Quality quality() {
    return new Quality(
        ending,
        start,
        blocked,
        finalSlope,
        reachable,
        slip,
        gap,
        clipped,
        faults,
        zero,
        clock,
        0.05);
  }

  private static Budgeted budgeted(double value, String unit, double standardUncertainty) {
    return new Budgeted(value, unit, List.of(new Contribution("all", standardUncertainty, "test")));
  }
}
