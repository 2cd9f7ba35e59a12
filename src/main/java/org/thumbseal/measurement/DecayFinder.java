package org.thumbseal.measurement;

import java.util.Locale;
import java.util.Optional;
import org.thumbseal.fit.FitResult;
import org.thumbseal.measurement.Decay.Fitted;
import org.thumbseal.measurement.Decay.Reference;
import org.thumbseal.measurement.PumpOff.Held;
import org.thumbseal.quantity.StandardAtmosphere;

/** From a blocked inlet to the leak, where the pump was off long enough. */
final class DecayFinder {
  private static final double STANDARD = StandardAtmosphere.SEA_LEVEL_PASCALS / 1_000;

  /** Highest pressure of the air at sea level (from memory: the record is 108 kPa). */
  private static final double HIGHEST_AMBIENT = 108;

  /** A jar opened to the air through a narrow inlet is empty of vacuum within this time, s. */
  private static final double LONGEST_RELEASE = 5;

  /** A pump takes some tenths of a second to stand still. */
  private static final double SPIN_DOWN = 0.5;

  /** Shorter than this the re-heating cannot be told from a leak, s. */
  private static final double SHORTEST = 8;

  /** Where the vacuum leaves the choked part by itself, so much of it is enough, s. */
  private static final double SHORTEST_OF_A_FAST_ONE = 1;

  private static final double SMOOTHED = 0.2;

  private static final double LARGEST_MISFIT = 3;
  private static final double SMALLEST_MISFIT = 0.05;

  private static final String TOO_SHORT =
      "record too short: hold 30 s longer with the pump off and the inlet blocked";

  private static final String TOO_FAST =
      "the vacuum was gone too fast for its rate to be measured: look for a large leak";

  private static final String MISFIT =
      "not a steady leak into a shut jar: keep hand, hoses and switch still, and repeat";

  private final Held held;
  private final Setup setup;
  private final double clockRate;
  private final Optional<AmbientPressure> ambient;
  private final Reference reference;
  private final double chokedAbove;

  DecayFinder(Held held, Setup setup, Optional<AmbientPressure> ambient, double clockRate) {
    this.held = held;
    this.setup = setup;
    this.clockRate = clockRate;
    this.ambient = ambient;
    this.reference =
        new Reference(
            ambient.map(AmbientPressure::kilopascals).orElse(STANDARD), ambient.isPresent());
    this.chokedAbove =
        LeakRate.chokedAbove(ambient.map(AmbientPressure::kilopascals).orElse(HIGHEST_AMBIENT));
  }

  /** Nothing where the inlet was blocked for less than a hand moves, as in a damaged record. */
  Optional<Decay> find() {
    return held.curve().isEmpty() ? Optional.empty() : search();
  }

  private Optional<Decay> search() {
    return PumpOff.in(held).filter(this::lasts).or(this::said).map(this::after);
  }

  /** What falls for less may be the release itself. */
  private boolean lasts(PumpOff off) {
    return held.end() - off.seconds() > LONGEST_RELEASE;
  }

  /** A tight jar shows nothing; but somebody who pinches a hose waits for a while. */
  private Optional<PumpOff> said() {
    double start = held.end() - SHORTEST - SPIN_DOWN - held.curve().period();
    return setup.pinched() && start > held.curve().firstTime()
        ? Optional.of(new PumpOff(start, 0, PumpOff.Sign.SAID))
        : Optional.empty();
  }

  private Decay after(PumpOff off) {
    if (off.sign() == PumpOff.Sign.LATER_BEND) {
      return refused(off, MISFIT);
    }
    double from = off.seconds() + SPIN_DOWN + 2 * off.standardUncertainty();
    double to = leavesChoked(from);
    boolean fast = to < held.end();
    if (to <= from) {
      return refused(off, neverChoked());
    }
    Curve part = held.curve().between(from, to + 1e-9);
    if (to - from < (fast ? SHORTEST_OF_A_FAST_ONE : SHORTEST) || part.isEmpty()) {
      return refused(off, fast ? TOO_FAST : TOO_SHORT);
    }
    double begin = part.firstTime();
    return DecayFit.of(
            part.since(begin), new DecayFit.Around(reference.kilopascals(), setup.jarLitres()))
        .map(fit -> judged(off, fit, part))
        .orElseGet(() -> refused(off, TOO_SHORT));
  }

  private String neverChoked() {
    return String.format(
        Locale.ROOT,
        "the vacuum stood below %.1f kPa, where the flow through a leak is not constant",
        chokedAbove);
  }

  /** The last time of the record, or when the inflow is no longer constant. */
  private double leavesChoked(double from) {
    Curve smooth = held.curve().between(from, held.end() + 1e-9).binned(SMOOTHED);
    for (int i = 0; i < smooth.size(); i++) {
      if (smooth.level(i) < chokedAbove) {
        return smooth.time(i) - SMOOTHED;
      }
    }
    return held.end();
  }

  private Decay refused(PumpOff off, String why) {
    return new Decay(
        off.seconds() * clockRate,
        held.end() * clockRate,
        Optional.empty(),
        Optional.empty(),
        new Decay.Circumstances(setup.pinched(), off.sign() == PumpOff.Sign.SAID),
        reference,
        Optional.empty(),
        Optional.of(why));
  }

  private Decay judged(PumpOff off, DecayFit fit, Curve part) {
    return isMisfit(fit.best(), part) ? refused(off, MISFIT) : measured(off, fit, part);
  }

  private boolean isMisfit(FitResult best, Curve part) {
    double inBin = (double) part.size() / best.size();
    double expected = Math.hypot(held.noise() / Math.sqrt(inBin), held.resolution() / 3);
    return best.rms() > Math.max(SMALLEST_MISFIT, LARGEST_MISFIT * expected);
  }

  private Decay measured(PumpOff off, DecayFit fit, Curve part) {
    DecayBudgets.Span span = new DecayBudgets.Span(part.firstTime(), part.lastTime(), clockRate);
    DecayBudgets budgets = new DecayBudgets(fit, span, steps(), setup);
    return new Decay(
        off.seconds() * clockRate,
        held.end() * clockRate,
        Optional.of(budgets.decayRate()),
        setup.jarLitres().map(litres -> budgets.leakRate(litres, reference, ambient)),
        new Decay.Circumstances(setup.pinched(), off.sign() == PumpOff.Sign.SAID),
        reference,
        Optional.of(
            new Fitted(
                part.firstTime() * clockRate,
                part.lastTime() * clockRate,
                chokedAbove,
                fit.best().rms(),
                fit.best().lag1Autocorrelation())),
        Optional.empty());
  }

  /**
   * Mean error of readings in steps, kPa: noise of standard deviation s leaves a swing of step/pi
   * exp(-2 pi2 s2/step2) (Fourier series of the rounding error).
   */
  private double steps() {
    double step = held.resolution();
    double noise = held.noise() * held.noise() - step * step / 12;
    return step > 0
        ? step / Math.PI * StrictMath.exp(-2 * Math.PI * Math.PI * Math.max(0, noise) / step / step)
        : 0;
  }
}
