package org.thumbseal.measurement;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.thumbseal.measurement.AmbientPressure.Origin;
import org.thumbseal.measurement.Quality.Zero;
import org.thumbseal.wire.WireRecord.Reference;

/** The way from a cut-out record to the quantities of a test, step by step. */
final class Measuring {
  private static final double BEFORE_ONSET = 0.3;
  private static final double BEFORE_BLOCKING = 3;
  private static final double OPEN_GUARD = 0.02;

  private final Recorded recorded;
  private final Setup setup;
  private final ClockCheck clock;
  private final Rest rest;
  private final Blocking blocking;
  private final Release release;
  private final Zero zero;
  private final SensorErrors errors;
  private final Optional<AmbientPressure> ambient;
  private final Curve blocked;
  private final double riseLimit;

  Measuring(Recorded recorded, Setup setup) {
    this.recorded = recorded;
    this.setup = setup;
    double seen = recorded.window().onsetSeconds();
    clock = ClockCheck.of(recorded.samples());
    release = Release.of(recorded, seen);
    Rest before = Rest.before(recorded.curve(), beforeOnset(seen));
    blocking = blocking(before, seen);
    rest = Rest.before(recorded.curve(), blocking.seconds() - OPEN_GUARD);
    zero = new ZeroFinder(recorded, setup, rest).find();
    errors =
        new SensorErrors(
            SensorErrors.UNCALIBRATED,
            recorded.resolution(),
            zero.standardUncertainty(),
            zero.source());
    ambient = setup.ambient().or(this::ambientAtRest);
    blocked =
        recorded.curve().between(blocking.seconds(), release.seconds()).minus(zero.kilopascals());
    riseLimit = setup.riseLimit().kilopascals(ambient);
  }

  /** The detector is late by some slots; leave those out of the baseline, if enough stays. */
  private double beforeOnset(double seen) {
    double from = recorded.curve().firstTime();
    return seen - from > 4 * BEFORE_ONSET ? seen - BEFORE_ONSET : seen;
  }

  private Blocking blocking(Rest before, double seen) {
    Curve curve = recorded.curve().between(beforeOnset(seen) - BEFORE_BLOCKING, release.seconds());
    if (!before.hasOpen() && curve.isEmpty()) {
      return new Blocking(seen, recorded.curve().period());
    }
    double highest = curve.binned(0.1).highest();
    return Blocking.of(
        new Blocking.Rise(curve, before.openMean(), highest - before.openMean(), recorded.noise()));
  }

  private Optional<AmbientPressure> ambientAtRest() {
    boolean known = setup.reference() == Reference.ABSOLUTE && rest.idle().isPresent();
    return known
        ? Optional.of(
            new AmbientPressure(
                -zero.kilopascals(),
                Math.abs(zero.kilopascals()) * SensorErrors.UNCALIBRATED,
                Origin.AT_REST))
        : Optional.empty();
  }

  Measurement measure() {
    Optional<Plateau> plateau =
        Plateau.isIn(blocked)
            ? Optional.of(Plateau.of(blocked, recorded.noise()))
            : Optional.empty();
    double open = rest.openMean() - zero.kilopascals();
    Optional<Crossing> crossing = Crossing.of(blocked, open + riseLimit, blocking.seconds());
    Optional<Exponential> exponential =
        Exponential.of(
            new Exponential.Rise(blocked, open, blocked.highest(), recorded.noise()),
            blocking.seconds());
    Quality quality = quality(new Judged(crossing, plateau, exponential));
    double highestRise =
        plateau.map(Plateau::kilopascals).orElseGet(() -> blocked.highest()) - open;
    return new Measurement(
        occludedAt(),
        openVacuum(open),
        riseLimit,
        crossing.filter(c -> quality.slip().isEmpty()).map(this::riseTime),
        plateau.map(this::maximum),
        highestRise,
        exponential,
        ambient,
        phases(),
        quality);
  }

  private List<PhaseSpan> phases() {
    return new PhaseSpans(recorded, rest, blocking, release)
        .list(blocked).stream()
            .map(s -> new PhaseSpan(s.phase(), s.start() * clock.rate(), s.end() * clock.rate()))
            .toList();
  }

  private Budgeted occludedAt() {
    return new Budgeted(
        blocking.seconds() * clock.rate(),
        "s",
        List.of(
            new Contribution("onset", blocking.standardUncertainty(), "fit of the first rise")));
  }

  private Budgeted openVacuum(double open) {
    return new Budgeted(
        open, "kPa", errors.ofLevel(open, rest.openError(), "mean over the open phase"));
  }

  private Budgeted maximum(Plateau plateau) {
    return new Budgeted(
        plateau.kilopascals(),
        "kPa",
        errors.ofLevel(plateau.kilopascals(), plateau.standardUncertainty(), "1 s mean"));
  }

  /** Time on the true clock; errors of the level turn into time over the slope at the crossing. */
  private Budgeted riseTime(Crossing crossing) {
    double device = crossing.seconds() - blocking.seconds();
    double noise = Math.hypot(crossing.levelError(), rest.openError());
    return new Budgeted(
        device * clock.rate(),
        "s",
        List.of(
            new Contribution(
                "sensor", errors.ofRise(riseLimit) / crossing.slope(), "gain and step over slope"),
            new Contribution("noise", noise / crossing.slope(), "noise over slope"),
            new Contribution("onset", blocking.standardUncertainty(), "fit of the first rise"),
            new Contribution(
                "sampling", recorded.curve().period() / Math.sqrt(12) / 4, "sample period"),
            new Contribution(
                "clock", device * clock.standardUncertainty(), "sensor against host")));
  }

  private record Judged(
      Optional<Crossing> crossing, Optional<Plateau> plateau, Optional<Exponential> exponential) {
    /** What comes after this moment cannot change the measured values. */
    double end(double release) {
      double rise = crossing.map(c -> c.seconds() + 0.3).orElse(release);
      return Math.min(release, Math.max(rise, plateau.map(Plateau::from).orElse(release)));
    }
  }

  private Quality quality(Judged judged) {
    double end = judged.end(release.seconds());
    double slope = FinalSlope.of(blocked);
    double tau = judged.exponential().map(e -> e.timeConstant().value()).orElse(10.0);
    double last =
        blocked.isEmpty() ? 0 : blocked.between(blocked.lastTime() - 1, release.seconds()).mean();
    return new Quality(
        recorded.window().ending(),
        rest.start(rest.openMean() - zero.kilopascals()),
        (release.seconds() - blocking.seconds()) * clock.rate(),
        slope,
        Math.max(blocked.highest(), last + 1.5 * Math.max(0, slope) * tau),
        Slip.in(blocked.between(blocking.seconds(), judged.plateau().map(Plateau::to).orElse(end))),
        longestGap(end),
        isClipped(),
        faults(),
        zero,
        new Quality.Clock(clock.rate(), clock.standardUncertainty(), clock.steady()),
        recorded.noise());
  }

  private double longestGap(double end) {
    return recorded.gaps().stream()
        .filter(
            g -> g.seconds() < end && g.seconds() + g.length() > blocking.seconds() - BEFORE_ONSET)
        .mapToDouble(g -> g.length())
        .max()
        .orElse(0);
  }

  private boolean isClipped() {
    return setup.range().isPresent()
        && recorded.samples().stream()
                .filter(s -> isBlocked(s.seconds()))
                .filter(s -> setup.range().get().isEnd(s.pascals()))
                .count()
            > 2;
  }

  private boolean isBlocked(double seconds) {
    return seconds >= blocking.seconds() && seconds < release.seconds();
  }

  private List<String> faults() {
    List<String> faults = new ArrayList<>();
    recorded.all(org.thumbseal.sample.StreamEvent.SensorFault.class).stream()
        .filter(
            f ->
                f.seconds() >= blocking.seconds() - BEFORE_ONSET
                    && f.seconds() <= release.seconds())
        .forEach(f -> faults.add(f.code()));
    if (!recorded.all(org.thumbseal.sample.StreamEvent.Restart.class).isEmpty()
        && recorded.window().ending() == org.thumbseal.phase.Ending.INTERRUPTED) {
      faults.add(Quality.RESTART);
    }
    return faults.stream().distinct().toList();
  }
}
