package org.thumbseal.measurement;

import java.util.Optional;
import org.thumbseal.fit.FitResult;
import org.thumbseal.fit.LeastSquares;
import org.thumbseal.fit.PumpDown;

/**
 * A rise that the pump model is laid through.
 *
 * @param curve vacuum without zero, against the time since the blocking
 * @param open vacuum at the blocking, kPa
 * @param ambient barometric pressure, kPa
 */
record PumpCurve(Curve curve, double open, double ambient) {
  private static final int POINTS = 400;

  /** Heat exchange of a jar in still air, s, to begin from. */
  private static final double USUAL_EXCHANGE = 1;

  /** What may be added to a pump at a tight jar. */
  enum Shape {
    TIGHT,
    LEAKING,
    RESTRICTED;

    PumpDown model(PumpDown.Rise rise) {
      return switch (this) {
        case TIGHT -> PumpDown.tight(rise);
        case LEAKING -> PumpDown.leaking(rise);
        case RESTRICTED -> PumpDown.restricted(rise);
      };
    }
  }

  PumpCurve thinned() {
    return new PumpCurve(curve.thinned(POINTS), open, ambient);
  }

  PumpCurve until(double seconds) {
    return new PumpCurve(curve.between(0, seconds), open, ambient);
  }

  /** As a sensor of a gain higher by this share would have read it. */
  PumpCurve withGain(double share) {
    return new PumpCurve(curve.times(1 + share), open * (1 + share), ambient);
  }

  PumpCurve withAmbient(double kilopascals) {
    return new PumpCurve(curve, open, kilopascals);
  }

  PumpCurve blockedLaterBy(double seconds) {
    return new PumpCurve(curve.since(seconds), open, ambient);
  }

  /**
   * The best tight curve of usual heat exchange, from which the search for another does not go
   * astray; empty where none goes through the rise.
   */
  Optional<FitResult> guess() {
    double highest = Math.min(0.98 * ambient, curve.highest());
    double tau = Math.max(0.2, curve.firstTimeAbove(0.63 * highest));
    PumpDown guess = PumpDown.exchanging(rise(), USUAL_EXCHANGE);
    double[] start = {1 / tau, 1 - highest / ambient};
    return LeastSquares.fit(guess, curve.points(), start).result();
  }

  /**
   * The best curve of a shape, begun at a {@link #guess}; empty where none goes through the rise.
   */
  Optional<FitResult> fit(Shape shape, FitResult guess) {
    return fit(shape, start(shape, guess));
  }

  private static double[] start(Shape shape, FitResult guess) {
    double rate = guess.parameter(PumpDown.RATE);
    double ultimate = guess.parameter(PumpDown.ULTIMATE);
    return switch (shape) {
      case TIGHT -> new double[] {rate, ultimate, USUAL_EXCHANGE};
      case LEAKING ->
          new double[] {rate, 0.8 * ultimate, USUAL_EXCHANGE, 0.2 * rate * Math.abs(ultimate)};
      case RESTRICTED -> new double[] {1.2 * rate, 0.8 * ultimate, USUAL_EXCHANGE, 0.2 / rate};
    };
  }

  /** The same, begun at given values. */
  Optional<FitResult> fit(Shape shape, double... start) {
    return LeastSquares.fit(shape.model(rise()), curve.points(), start).result();
  }

  private PumpDown.Rise rise() {
    return new PumpDown.Rise(ambient, open, curve.lastTime());
  }
}
