package org.thumbseal.measurement;

import java.util.Comparator;
import java.util.Optional;
import java.util.stream.Stream;
import org.thumbseal.fit.FitResult;
import org.thumbseal.fit.PumpDown;
import org.thumbseal.measurement.PumpCurve.Shape;

/**
 * The pump as the rise shows it: a model of pump, jar and cooling gas laid through the whole rise.
 *
 * @param rise that it was laid through
 * @param shape what the model had to have beside pump and jar
 * @param fit its parameters
 * @param noise standard deviation that the points have without any misfit, kPa
 */
record PumpFit(PumpCurve rise, Shape shape, FitResult fit, double noise) {
  /** Points that a fit needs. */
  private static final int FEWEST = 30;

  /** Standard errors by which a leak, a restriction or a ceiling must stand out. */
  private static final double SIGNIFICANT = 5;

  /** A ceiling cuts off at least so much, kPa. */
  private static final double LEAST_CUT = 1.5;

  /** A leak or restriction smaller beside the pump is not told from the model's own errors. */
  private static final double LEAST_SHARE = 0.02;

  /** Share of the misfit that they may leave. */
  private static final double CLEARLY_BETTER = 0.85;

  /** Standard error of the speed, as a share of it, beyond which it is not determined. */
  private static final double LARGEST_RATE_ERROR = 0.1;

  /** Autocorrelation of neighbouring residuals that noise does not reach. */
  private static final double LARGEST_LAG1 = 0.5;

  /** Misfit in units of the noise that makes one look for a ceiling. */
  private static final double SUSPICIOUS_IN_NOISE = 1.5;

  /** Misfit in units of the noise beyond which the model does not hold. */
  private static final double LARGEST_MISFIT_IN_NOISE = 2;

  /** What real jars and pumps differ from the model, as a share of the highest vacuum. */
  private static final double USUAL_MISFIT = 0.006;

  /** Time constants that the rise has to cover. */
  private static final double SHORTEST_IN_TAU = 1.5;

  /** Fits a rise; empty where it has too few points or no curve of this kind goes through it. */
  static Optional<PumpFit> of(PumpCurve whole) {
    PumpCurve rise = whole.thinned();
    if (rise.curve().size() < FEWEST) {
      return Optional.empty();
    }
    return rise.guess().flatMap(guess -> of(rise, guess));
  }

  private static Optional<PumpFit> of(PumpCurve rise, FitResult guess) {
    Optional<PumpFit> tight = of(rise, Shape.TIGHT, guess);
    return Stream.of(Shape.LEAKING, Shape.RESTRICTED)
        .flatMap(shape -> of(rise, shape, guess).stream())
        .filter(f -> f.isBelieved(tight))
        .min(Comparator.comparingDouble(f -> f.fit().rms()))
        .or(() -> tight);
  }

  /**
   * Fits the part of a rise before it was cut off at a vacuum that the pump could have passed;
   * empty where it was not cut off so.
   *
   * @param ceiling where the vacuum stayed, kPa
   */
  static Optional<PumpFit> belowCeiling(PumpCurve whole, double ceiling) {
    double noise = Spikes.noise(whole.curve());
    double reached = whole.curve().firstTimeAbove(ceiling - Math.max(0.5, 4 * noise));
    Curve held = whole.curve().between(reached, Double.POSITIVE_INFINITY).binned(0.5);
    boolean flat = held.size() > 2 && held.minus(ceiling).deviation() < Math.max(0.5, noise);
    return Optional.of(whole.until(reached))
        .filter(part -> flat && part.curve().size() >= FEWEST)
        .flatMap(PumpFit::of)
        .filter(f -> !f.isMisfit() && f.reaches() - ceiling > f.reachError());
  }

  /** What the vacuum would come to, kPa. */
  private double reaches() {
    double drawn = value(PumpDown.LEAK) / value(PumpDown.RATE);
    return rise.ambient() * (1 - value(PumpDown.ULTIMATE) - drawn);
  }

  private double reachError() {
    return Math.max(LEAST_CUT, SIGNIFICANT * rise.ambient() * error(PumpDown.ULTIMATE));
  }

  private static Optional<PumpFit> of(PumpCurve rise, Shape shape, FitResult guess) {
    return rise.fit(shape, guess).map(f -> new PumpFit(rise, shape, f, Spikes.noise(rise.curve())));
  }

  /** More than pump and jar is believed where it matters, is significant and explains misfit. */
  private boolean isBelieved(Optional<PumpFit> tight) {
    return share() > LEAST_SHARE
        && value(PumpDown.LEAK) >= SIGNIFICANT * error(PumpDown.LEAK)
        && value(PumpDown.RESISTANCE) >= SIGNIFICANT * error(PumpDown.RESISTANCE)
        && isBetterThan(tight, CLEARLY_BETTER);
  }

  /** Whether it leaves less than a share of the misfit of another, if there is another. */
  boolean isBetterThan(Optional<PumpFit> other, double share) {
    return other.map(o -> fit.rms() < share * o.fit().rms()).orElse(true);
  }

  /** What leak or restriction come to beside the pump. */
  private double share() {
    double rate = value(PumpDown.RATE);
    return value(PumpDown.LEAK) / rate + value(PumpDown.RESISTANCE) * rate;
  }

  /** A parameter of {@link PumpDown}; 0 where the model has it not. */
  double value(int parameter) {
    int place = place(parameter);
    return place < 0 ? 0 : fit.parameter(place);
  }

  /**
   * Its standard error; 0 where the model has it not. Residuals that go the same way are fewer than
   * they seem: the error grows for it.
   */
  double error(int parameter) {
    int place = place(parameter);
    double lag1 = Math.min(0.98, Math.max(0, fit.lag1Autocorrelation()));
    return place < 0 ? 0 : fit.standardError(place) * Math.sqrt((1 + lag1) / (1 - lag1));
  }

  private int place(int parameter) {
    return switch (parameter) {
      case PumpDown.LEAK -> shape == Shape.LEAKING ? PumpDown.LEAK : -1;
      case PumpDown.RESISTANCE -> shape == Shape.RESTRICTED ? PumpDown.LEAK : -1;
      default -> parameter;
    };
  }

  /** The same model through a rise that is a little another one, to see what it changes. */
  Optional<PumpFit> again(PumpCurve other) {
    return other.fit(shape, fit.parameters()).map(f -> new PumpFit(other, shape, f, noise));
  }

  boolean isTooShort() {
    return rise.curve().lastTime() * value(PumpDown.RATE) < SHORTEST_IN_TAU;
  }

  boolean isUndetermined() {
    return error(PumpDown.RATE) > LARGEST_RATE_ERROR * value(PumpDown.RATE);
  }

  /** Whether noise alone does not explain the residuals. */
  boolean isSuspicious() {
    return fit.rms() > SUSPICIOUS_IN_NOISE * noise && fit.lag1Autocorrelation() > LARGEST_LAG1;
  }

  /** Beyond the noise, and beyond what a real jar and pump differ from the model. */
  boolean isMisfit() {
    double usual = USUAL_MISFIT * rise.curve().highest();
    double largest = Math.max(usual, LARGEST_MISFIT_IN_NOISE * noise);
    return fit.rms() > largest && fit.lag1Autocorrelation() > LARGEST_LAG1;
  }
}
