package org.thumbseal.measurement;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import org.thumbseal.measurement.Contribution.Input;

/**
 * The two rates of a decay with their budgets.
 *
 * @param fit rates per second on the sensor's clock
 * @param span the part that was fitted
 * @param steps mean error that the steps of the readings may leave at either end, kPa
 * @param setup jar volume and calibration
 */
record DecayBudgets(DecayFit fit, Span span, double steps, Setup setup) {
  private static final double MINUTE = 60;
  private static final String PER_MINUTE = "kPa/min";
  private static final Map<String, String> SOURCES =
      Map.of(
          "fit", "scatter about the model; neighbours that are alike count once",
          "warming", "the gas warms again; its heat transfer is not known",
          "steps", "steps of the readings that noise does not blur");

  /** +-3 %: what is printed on a jar (common practice, no published source). */
  private static final double VOLUME = 0.03;

  /**
   * The part of a curve that was fitted.
   *
   * @param from s
   * @param to s
   * @param clockRate true seconds in one of the sensor's
   */
  record Span(double from, double to, double clockRate) {
    double seconds() {
      return (to - from) * clockRate;
    }
  }

  /** Fall of the vacuum, kPa/min. */
  Budgeted decayRate() {
    return new Budgeted(perMinute(fit.rate()), PER_MINUTE, common(1)).reached(howItFell());
  }

  /** Air that leaks in, mL/min, counted at a pressure in kPa. */
  Budgeted leakRate(double litres, Decay.Reference air, Optional<AmbientPressure> ambient) {
    double factor = LeakRate.millilitresPerMinute(1 / MINUTE, litres, air.kilopascals());
    double value = perMinute(fit.rate()) * factor;
    List<Contribution> budget = common(factor);
    budget.add(
        new Contribution(
            "volume",
            Input.rectangular(litres, VOLUME * litres, "L"),
            value / litres,
            "what a jar is off by (common practice)"));
    ambient.ifPresent(a -> budget.add(ambient(a, value)));
    return new Budgeted(value, "mL/min", budget).reached(howItLeaks(litres, air));
  }

  private double perMinute(double perSecond) {
    return perSecond * MINUTE / span.clockRate();
  }

  private static Contribution ambient(AmbientPressure ambient, double value) {
    String source =
        String.format(
            Locale.ROOT,
            "%s: u = %.2f of %.2f kPa",
            ambient.origin().code(),
            ambient.standardUncertainty(),
            ambient.kilopascals());
    double share = ambient.standardUncertainty() / ambient.kilopascals();
    return new Contribution("ambient", Math.abs(value) * share, source);
  }

  /** What is in both rates, in a unit that is so many of 1 kPa/min. */
  private List<Contribution> common(double unit) {
    double length = span.to() - span.from();
    List<Contribution> budget = new ArrayList<>();
    budget.add(line("fit", fit.rate(), fit.fitError(), unit));
    budget.add(line("warming", 0, fit.warmingError(), unit));
    setup
        .calibration()
        .errors(Math.abs(fit.rate()) * length)
        .forEach(line -> budget.add(ofSensor(line, unit * MINUTE / span.seconds())));
    budget.add(line("steps", 0, steps / length, unit));
    return budget;
  }

  private Contribution line(String name, double estimate, double error, double unit) {
    Input input = Input.normal(perMinute(estimate) * unit, perMinute(error) * unit, "");
    return Contribution.of(name, input, SOURCES.getOrDefault(name, name));
  }

  /** The error of the fall is spread over its time. */
  private static Contribution ofSensor(Contribution line, double factor) {
    Input input = Input.shaped(0, line.standardUncertainty() * factor, line.input().distribution());
    return Contribution.of(line.name(), input, line.source());
  }

  private String howItFell() {
    return String.format(
        Locale.ROOT,
        "rate of a shut jar whose gas warms to the wall, fitted from %.2f to %.2f s, where the"
            + " inflow is choked",
        span.from() * span.clockRate(),
        span.to() * span.clockRate());
  }

  private String howItLeaks(double litres, Decay.Reference air) {
    return String.format(
        Locale.ROOT,
        "fall of %.3f kPa/min times a jar of %.3g L over %s of %.2f kPa",
        perMinute(fit.rate()),
        litres,
        air.isAmbient() ? "an ambient pressure" : "the standard atmosphere",
        air.kilopascals());
  }
}
