package org.thumbseal.measurement;

import java.util.List;
import java.util.Optional;
import org.thumbseal.measurement.AmbientPressure.Origin;
import org.thumbseal.measurement.Quality.Zero;
import org.thumbseal.wire.WireRecord.Reference;

/** The way from a located test to its quantities, step by step. */
final class Measuring {
  /** A quarter of a sample period, rectangular: what the fits leave of it. */
  private static final double SAMPLING = 0.25 / Math.sqrt(12);

  /** Where the ambient pressure is not known, kPa; it hardly matters to the shape of a rise. */
  private static final double STANDARD_AMBIENT = 101.325;

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
            setup.calibration(),
            located.recorded().resolution(),
            zero.standardUncertainty(),
            zero.source());
    ambient = setup.ambient().or(this::ambientAtRest);
    blocked = located.blocked().minus(zero.kilopascals());
    open = located.rest().openMean() - zero.kilopascals();
    riseLimit = setup.riseLimit().kilopascals(ambient);
  }

  private Optional<AmbientPressure> ambientAtRest() {
    boolean known =
        setup.reference() == Reference.ABSOLUTE
            && located.rest().idle().isPresent()
            && AmbientPressure.isPlausible(-zero.kilopascals());
    return known
        ? Optional.of(
            new AmbientPressure(
                -zero.kilopascals(),
                Math.abs(zero.kilopascals()) * Uncalibrated.RELATIVE,
                Origin.AT_REST))
        : Optional.empty();
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
            located.blocking().standardUncertainty(),
            ambient.map(AmbientPressure::standardUncertainty).orElse(ANY_AMBIENT),
            setup.jarLitres());
    return PumpEstimating.of(new PumpCurve(since, open, kilopascals), plateau, known);
  }

  private Measurement measurement(
      Inspection.Curves curves, Quality quality, Optional<PumpEstimate> pump) {
    double highest = curves.plateau().map(Plateau::kilopascals).orElseGet(blocked::highest);
    return new Measurement(
        occludedAt(),
        openVacuum(),
        riseLimit,
        curves.crossing().filter(c -> quality.slip().isEmpty()).map(this::riseTime),
        curves.plateau().map(this::maximum),
        highest - open,
        curves.exponential(),
        pump,
        ambient,
        new PhaseSpans(located).list(blocked),
        quality,
        setup.calibration());
  }

  private Budgeted occludedAt() {
    Blocking blocking = located.blocking();
    return new Budgeted(
        located.trueTime(blocking.seconds()),
        "s",
        List.of(
            new Contribution("onset", blocking.standardUncertainty(), "fit of the first rise")));
  }

  private Budgeted openVacuum() {
    return new Budgeted(
        open, "kPa", errors.ofLevel(open, located.rest().openError(), "mean over the open phase"));
  }

  private Budgeted maximum(Plateau plateau) {
    return new Budgeted(
        plateau.kilopascals(),
        "kPa",
        errors.ofLevel(plateau.kilopascals(), plateau.standardUncertainty(), "1 s mean"));
  }

  /** Time on the true clock; errors of the level turn into time over the slope at the crossing. */
  private Budgeted riseTime(Crossing crossing) {
    double device = crossing.seconds() - located.blocking().seconds();
    return new Budgeted(
        located.trueTime(device),
        "s",
        List.of(
            new Contribution(
                "sensor", errors.ofRise(riseLimit) / crossing.slope(), "gain and step over slope"),
            new Contribution("noise", noiseOfRise(crossing), "noise over slope"),
            new Contribution(
                "onset", located.blocking().standardUncertainty(), "fit of the first rise"),
            new Contribution(
                "sampling", SAMPLING * located.recorded().curve().period(), "sample period"),
            new Contribution(
                "clock", device * located.clock().standardUncertainty(), "sensor against host")));
  }

  private double noiseOfRise(Crossing crossing) {
    return Math.hypot(crossing.levelError(), located.rest().openError()) / crossing.slope();
  }
}
