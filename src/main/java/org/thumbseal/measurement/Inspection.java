package org.thumbseal.measurement;

import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import org.thumbseal.measurement.Quality.Zero;
import org.thumbseal.phase.Ending;
import org.thumbseal.sample.StreamEvent.Gap;
import org.thumbseal.sample.StreamEvent.Restart;
import org.thumbseal.sample.StreamEvent.SensorFault;

/** Looks a record over for what speaks against judging the test on it. */
final class Inspection {
  private static final double AROUND = 0.3;

  /** Time constant where no curve could be fitted, s. */
  private static final double USUAL_TAU = 10;

  /** A gas that cooled on the way goes on climbing for longer than one exponential says. */
  private static final double THERMAL_TAIL = 1.5;

  /** Readings at the end of the range, beyond what spikes and noise explain. */
  private static final int FEW = 2;

  /** So much below the maximum the pump does not pull any more, kPa. */
  private static final double COME_DOWN = 1;

  private static final double SMOOTHED = 0.2;

  private final Located located;
  private final Setup setup;
  private final Curves curves;

  /**
   * What was made of the blocked part.
   *
   * @param blocked the curve, zero taken off
   * @param zero that was taken off
   */
  record Curves(
      Curve blocked,
      Zero zero,
      Optional<Crossing> crossing,
      Optional<Plateau> plateau,
      Optional<Exponential> exponential) {}

  Inspection(Located located, Setup setup, Curves curves) {
    this.located = located;
    this.setup = setup;
    this.curves = curves;
  }

  Quality quality() {
    double slope = FinalSlope.of(pumped());
    return new Quality(
        located.recorded().window().ending(),
        located.rest().start(located.rest().openMean() - curves.zero().kilopascals()),
        located.trueTime(pumpedEnd() - begin()),
        slope,
        reachable(slope),
        Slip.in(curves.blocked().between(begin(), slipEnd())),
        longestGap(),
        isClipped(),
        faults(),
        curves.zero(),
        clock(),
        located.recorded().noise());
  }

  private double begin() {
    return located.blocking().seconds();
  }

  private double end() {
    return located.release().seconds();
  }

  private Quality.Clock clock() {
    ClockCheck clock = located.clock();
    return new Quality.Clock(clock.rate(), clock.standardUncertainty(), clock.steady());
  }

  /**
   * The end of the part in which the pump pulled at a blocked inlet: where the vacuum comes down
   * from its maximum, be it that the pump was switched off, and else the release.
   */
  private double pumpedEnd() {
    Optional<Plateau> plateau = curves.plateau();
    if (plateau.isEmpty()) {
      return end();
    }
    double highest = plateau.get().kilopascals();
    Curve after = curves.blocked().between(plateau.get().to(), end()).binned(1);
    boolean cameDown = after.size() > 1 && highest - after.level(after.size() - 1) > COME_DOWN;
    return cameDown ? timeOfHighest() : end();
  }

  private double timeOfHighest() {
    Curve smooth = curves.blocked().binned(SMOOTHED);
    int best = 0;
    for (int i = 1; i < smooth.size(); i++) {
      best = smooth.level(i) > smooth.level(best) ? i : best;
    }
    return smooth.time(best);
  }

  /** The part in which the pump pulled at a blocked inlet. */
  Curve pumped() {
    return curves.blocked().between(begin(), pumpedEnd());
  }

  private double reachable(double slope) {
    Curve blocked = pumped();
    double tau = curves.exponential().map(e -> e.timeConstant().value()).orElse(USUAL_TAU);
    double last =
        blocked.isEmpty() ? 0 : blocked.between(blocked.lastTime() - 1, pumpedEnd()).mean();
    return Math.max(blocked.highest(), last + THERMAL_TAIL * Math.max(0, slope) * tau);
  }

  /** After the maximum a fall is no slip but the end. */
  private double slipEnd() {
    return curves.plateau().map(Plateau::to).orElse(decided());
  }

  /** What comes after this moment cannot change the measured values. */
  private double decided() {
    double rise = curves.crossing().map(c -> c.seconds() + AROUND).orElse(end());
    return Math.min(end(), Math.max(rise, curves.plateau().map(Plateau::from).orElse(end())));
  }

  private double longestGap() {
    return located.recorded().gaps().stream()
        .filter(g -> g.seconds() < decided() && g.seconds() + g.length() > begin() - AROUND)
        .mapToDouble(Gap::length)
        .max()
        .orElse(0);
  }

  private boolean isClipped() {
    return setup.range().filter(range -> countAtEnds(range) > FEW).isPresent();
  }

  private long countAtEnds(Setup.Range range) {
    return located.recorded().samples().stream()
        .filter(s -> s.seconds() >= begin() && s.seconds() < end())
        .filter(s -> range.isEnd(s.pascals()))
        .count();
  }

  private List<String> faults() {
    Stream<String> reported =
        located.recorded().all(SensorFault.class).stream()
            .filter(f -> f.seconds() >= begin() - AROUND && f.seconds() <= end())
            .map(SensorFault::code);
    return Stream.concat(reported, restarted() ? Stream.of(Quality.RESTART) : Stream.empty())
        .distinct()
        .toList();
  }

  private boolean restarted() {
    return located.recorded().window().ending() == Ending.INTERRUPTED
        && !located.recorded().all(Restart.class).isEmpty();
  }
}
