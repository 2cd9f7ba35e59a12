package org.thumbseal.measurement;

import java.util.Optional;
import org.thumbseal.measurement.Quality.Zero;
import org.thumbseal.quantity.StandardAtmosphere;

/** The way from a located test to its quantities, step by step. */
final class Measuring {
  /** Where the ambient pressure is not known, kPa; it hardly matters to the shape of a rise. */
  private static final double STANDARD_AMBIENT = StandardAtmosphere.SEA_LEVEL_PASCALS / 1_000;

  /** From the sea to some 2500 m, rectangular: what is known of it then. */
  private static final double ANY_AMBIENT = 13 / Math.sqrt(3);

  private final Located located;
  private final Setup setup;
  private final Zero zero;
  private final SensorErrors errors;
  private final Optional<AmbientPressure> ambient;
  private final Curve blocked;
  private final double open;
  private final double riseLimit;

  Measuring(Located located, Setup setup) {
    this.located = located;
    this.setup = setup;
    zero = new ZeroFinder(located.recorded(), setup, located.rest()).find();
    errors =
        new SensorErrors(
            setup.calibration(), located.recorded().resolution(), zero, located.recorded().noise());
    ambient = setup.ambient().or(() -> located.rest().air(setup, zero));
    blocked = located.blocked().minus(zero.kilopascals());
    open = located.rest().openMean() - zero.kilopascals();
    riseLimit = setup.riseLimit().kilopascals(ambient);
  }

  Measurement measure() {
    double noise = located.recorded().noise();
    double onset = located.blocking().seconds();
    Optional<Plateau> plateau =
        Plateau.isIn(blocked) ? Optional.of(Plateau.of(blocked, noise)) : Optional.empty();
    Inspection.Curves curves =
        new Inspection.Curves(
            blocked,
            zero,
            Crossing.of(blocked, open + riseLimit, onset),
            plateau,
            Exponential.of(new Exponential.Rise(blocked, open, blocked.highest(), noise), onset));
    Inspection inspection = new Inspection(located, setup, curves);
    return measurement(curves, inspection.quality(), pump(inspection.pumped(), plateau));
  }

  private Optional<PumpEstimate> pump(Curve pumped, Optional<Plateau> plateau) {
    if (pumped.isEmpty()) {
      return Optional.empty();
    }
    double rate = located.clock().rate();
    double highest = Math.max(1, pumped.highest());
    Curve since = pumped.since(located.blocking().seconds()).slowedBy(rate);
    double kilopascals = ambient.map(AmbientPressure::kilopascals).orElse(STANDARD_AMBIENT);
    PumpEstimating.Known known =
        new PumpEstimating.Known(
            setup.calibration().standardUncertainty(highest) / highest,
            located.clock().standardUncertainty(),
            Math.hypot(located.blocking().standardUncertainty(), located.clock().instantError()),
            ambient.map(AmbientPressure::standardUncertainty).orElse(ANY_AMBIENT),
            setup.jarLitres());
    return PumpEstimating.of(new PumpCurve(since, open, kilopascals), plateau, known);
  }

  private Measurement measurement(
      Inspection.Curves curves, Quality quality, Optional<PumpEstimate> pump) {
    Optional<Decay> decay = decay();
    Budgets budgets = new Budgets(located, errors, open, riseLimit);
    double highest = curves.plateau().map(Plateau::kilopascals).orElseGet(blocked::highest);
    return new Measurement(
        budgets.occludedAt(),
        budgets.openVacuum(),
        riseLimit,
        curves.crossing().filter(c -> quality.slip().isEmpty()).map(budgets::riseTime),
        curves.plateau().map(budgets::maximum),
        highest - open,
        curves.exponential(),
        pump,
        decay,
        ambient,
        new PhaseSpans(located, decay).list(blocked),
        quality,
        setup.calibration(),
        located.recorded().window().start().map(start -> located.trueTime(start.seconds())));
  }

  private Optional<Decay> decay() {
    Recorded recorded = located.recorded();
    Curve rest = located.rest().zeroPart(recorded.curve()).orElseGet(recorded::quiet);
    PumpOff.Held held =
        new PumpOff.Held(blocked, recorded.resolution(), Math.sqrt(Unrest.unrest(rest)));
    return new DecayFinder(held, setup, ambient, located.clock().rate()).find();
  }
}
