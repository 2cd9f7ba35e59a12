package org.thumbseal.accuracy;

import static org.thumbseal.accuracy.Ranked.text;

import java.util.List;
import java.util.OptionalDouble;
import java.util.stream.DoubleStream;

/** How far the measured values are from the truth. */
final class ErrorFigures {
  private static final double RISE_SECONDS = 0.030;
  private static final double RISE_SHARE = 0.002;
  private static final double MAXIMUM_KILOPASCALS = 0.08;
  private static final double SPEED_SHARE = 0.05;

  private ErrorFigures() {}

  static Row rise(List<Trial> trials) {
    String what = "riseTime error, 95 %";
    String must = "30 ms + 0.2 %";
    Ranked shares = Ranked.of(sizes(trials, ErrorFigures::riseShare));
    Ranked errors = Ranked.of(sizes(trials, t -> t.error(Truth.RISE)));
    return shares.isEmpty()
        ? Row.notMeasured(what, must)
        : Row.judged(
            what,
            must,
            text(
                "%.2f of it (%.0f ms; n = %d)",
                shares.within(0.95), 1_000 * errors.within(0.95), shares.count()),
            shares.within(0.95) <= 1);
  }

  private static OptionalDouble riseShare(Trial trial) {
    double allowed = RISE_SECONDS + RISE_SHARE * trial.truth().value(Truth.RISE).orElse(Double.NaN);
    return scaled(trial.error(Truth.RISE), allowed);
  }

  static Row maximum(List<Trial> trials) {
    String what = "maximumVacuum error, no gain error, 95 %";
    String must = "0.08 kPa";
    Ranked errors = Ranked.of(sizes(trials, t -> t.error(Truth.MAXIMUM)));
    return errors.isEmpty()
        ? Row.notMeasured(what, must)
        : Row.judged(
            what,
            must,
            text("%.3f kPa (n = %d)", errors.within(0.95), errors.count()),
            errors.within(0.95) <= MAXIMUM_KILOPASCALS);
  }

  static Row speed(String which, List<Trial> trials) {
    String what = "pumpingSpeed error" + which + ", 90 %";
    String must = "5 %";
    Ranked shares = Ranked.of(sizes(trials, ErrorFigures::speedShare));
    return shares.isEmpty()
        ? Row.notMeasured(what, must)
        : Row.judged(
            what,
            must,
            text(
                "%.1f %% (median %.1f %%; %d of %d measured)",
                100 * shares.within(0.9), 100 * shares.within(0.5), shares.count(), trials.size()),
            shares.within(0.9) <= SPEED_SHARE);
  }

  private static OptionalDouble speedShare(Trial trial) {
    double real = trial.truth().value(Truth.SPEED).orElse(Double.NaN);
    return scaled(trial.error(Truth.SPEED), real);
  }

  private static OptionalDouble scaled(OptionalDouble error, double unit) {
    return error.isPresent() ? OptionalDouble.of(error.getAsDouble() / unit) : error;
  }

  private static DoubleStream sizes(
      List<Trial> trials, java.util.function.Function<Trial, OptionalDouble> size) {
    return trials.stream().map(size).flatMapToDouble(OptionalDouble::stream);
  }
}
