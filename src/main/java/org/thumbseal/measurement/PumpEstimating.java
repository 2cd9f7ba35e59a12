package org.thumbseal.measurement;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.ToDoubleFunction;
import org.thumbseal.fit.PumpDown;
import org.thumbseal.measurement.Contribution.Input;
import org.thumbseal.measurement.PumpCurve.Shape;
import org.thumbseal.measurement.PumpEstimate.Distrust;
import org.thumbseal.quantity.Quantity;

/** Turns the fitted model into quantities with their budgets. */
final class PumpEstimating {
  private static final double SECONDS_PER_MINUTE = 60;

  /** How warm the gas is when it reaches the pump: so much of the speed, rectangular. */
  private static final double MODEL = 0.02;

  /** A jar's marks: so much of the volume, rectangular (common practice). */
  private static final double VOLUME = 0.03;

  /** A ceiling is believed where it leaves so much of the misfit. */
  private static final double CLEARLY_BETTER = 0.6;

  /** Where a changed curve cannot be fitted again, this share of the value is taken. */
  private static final double UNKNOWN = 0.1;

  private final Known known;
  private final PumpFit fit;
  private final Optional<Double> ceiling;
  private final List<Change> changes;

  /**
   * What is known beside the curve, as standard uncertainties.
   *
   * @param gain of the sensor, as a share
   * @param clock of the sensor's clock, as a share
   * @param onset of the blocking, s
   * @param ambient of the ambient pressure, kPa
   * @param litres volume of the jar, L
   */
  record Known(double gain, double clock, double onset, double ambient, Optional<Double> litres) {}

  /** The same model through a curve that one uncertain input has changed. */
  private record Change(String name, String source, Optional<PumpFit> fit) {}

  private PumpEstimating(PumpFit fit, Optional<Double> ceiling, Known known) {
    this.fit = fit;
    this.ceiling = ceiling;
    this.known = known;
    PumpCurve rise = fit.rise();
    this.changes =
        List.of(
            new Change("sensor", "gain, by fitting again", fit.again(rise.withGain(known.gain()))),
            new Change(
                "ambient",
                "ambient pressure, by fitting again",
                fit.again(rise.withAmbient(rise.ambient() + known.ambient()))),
            new Change(
                "onset",
                "instant of the blocking, by fitting again",
                fit.again(rise.blockedLaterBy(known.onset()))));
  }

  /** Estimates the pump from the part of a test in which it pulled at a blocked inlet. */
  static Optional<PumpEstimate> of(PumpCurve pumped, Optional<Plateau> plateau, Known known) {
    Optional<PumpFit> whole = PumpFit.of(pumped);
    Optional<PumpFit> cutOff =
        plateau
            .filter(p -> whole.map(PumpFit::isSuspicious).orElse(true))
            .flatMap(p -> PumpFit.belowCeiling(pumped, p.kilopascals()))
            .filter(f -> f.isBetterThan(whole, CLEARLY_BETTER));
    Optional<Double> ceiling = cutOff.flatMap(f -> plateau.map(Plateau::kilopascals));
    return cutOff.or(() -> whole).map(f -> new PumpEstimating(f, ceiling, known).estimate());
  }

  private PumpEstimate estimate() {
    return new PumpEstimate(
        rate(),
        ultimate(),
        Quantity.seconds(fit.value(PumpDown.EXCHANGE), fit.error(PumpDown.EXCHANGE)),
        leak(),
        resistance(),
        ceiling,
        known.litres().map(this::flows),
        new PumpEstimate.Misfit(fit.fit().rms(), fit.noise(), fit.fit().lag1Autocorrelation()),
        distrust());
  }

  private Budgeted rate() {
    double rate = fit.value(PumpDown.RATE);
    List<Contribution> budget = fitted(f -> f.value(PumpDown.RATE), fit.error(PumpDown.RATE));
    budget.add(new Contribution("clock", rate * known.clock(), "sensor against host"));
    budget.add(model(rate));
    return new Budgeted(rate, "1/s", budget);
  }

  private Budgeted ultimate() {
    double ambient = fit.rise().ambient();
    List<Contribution> budget =
        fitted(
            f -> f.rise().ambient() * f.value(PumpDown.ULTIMATE),
            ambient * fit.error(PumpDown.ULTIMATE));
    return new Budgeted(ambient * fit.value(PumpDown.ULTIMATE), "kPa", budget);
  }

  private Optional<Budgeted> leak() {
    if (fit.shape() != Shape.LEAKING) {
      return Optional.empty();
    }
    double leak = fit.value(PumpDown.LEAK);
    List<Contribution> budget = fitted(f -> f.value(PumpDown.LEAK), fit.error(PumpDown.LEAK));
    budget.add(model(leak));
    return Optional.of(new Budgeted(leak, "1/s", budget));
  }

  private Optional<Quantity> resistance() {
    double rate = fit.value(PumpDown.RATE);
    return fit.shape() == Shape.RESTRICTED
        ? Optional.of(
            new Quantity(
                rate * fit.value(PumpDown.RESISTANCE), "1", rate * fit.error(PumpDown.RESISTANCE)))
        : Optional.empty();
  }

  /** Scatter of the fit, and what the uncertain inputs change. */
  private List<Contribution> fitted(ToDoubleFunction<PumpFit> value, double error) {
    double now = value.applyAsDouble(fit);
    List<Contribution> budget = new ArrayList<>();
    budget.add(new Contribution("fit", error, "scatter about the model"));
    for (Change change : changes) {
      double by =
          change
              .fit()
              .map(f -> Math.abs(value.applyAsDouble(f) - now))
              .orElse(UNKNOWN * Math.abs(now));
      budget.add(new Contribution(change.name(), by, change.source()));
    }
    return budget;
  }

  private static Contribution model(double value) {
    return Contribution.of(
        "model", Input.rectangular(0, value * MODEL, ""), "warmth of the gas at the pump: +-2 %");
  }

  private PumpEstimate.Flows flows(double litres) {
    return new PumpEstimate.Flows(
        inJar(rate(), litres),
        inJar(rate(), litres * (1 - fit.value(PumpDown.ULTIMATE))),
        leak().map(q -> inJar(q, litres)));
  }

  /** A flow over the jar's volume, 1/s, as L/min. */
  private Budgeted inJar(Budgeted perVolume, double litres) {
    double factor = litres * SECONDS_PER_MINUTE;
    double value = perVolume.value() * factor;
    double volume = known.litres().orElseThrow();
    List<Contribution> budget = new ArrayList<>();
    perVolume.budget().forEach(c -> budget.add(c.through("1/s", factor)));
    Input marks = Input.rectangular(volume, volume * VOLUME, "L");
    budget.add(new Contribution("volume", marks, value / volume, "volume as given: +-3 %"));
    return new Budgeted(value, "L/min", budget);
  }

  private Optional<Distrust> distrust() {
    if (fit.isTooShort()) {
      return Optional.of(Distrust.TOO_SHORT);
    }
    if (fit.isMisfit()) {
      return Optional.of(Distrust.MISFIT);
    }
    if (fit.isUndetermined()) {
      return Optional.of(Distrust.UNDETERMINED);
    }
    return fit.shape() == Shape.RESTRICTED ? Optional.of(Distrust.RESTRICTED) : Optional.empty();
  }
}
