package org.thumbseal.measurement;

import java.util.Optional;
import org.thumbseal.fit.FitResult;
import org.thumbseal.fit.LinearLeastSquares;
import org.thumbseal.measurement.PumpOff.Fall;
import org.thumbseal.measurement.PumpOff.Held;

/**
 * Where a vacuum that was held begins to fall: the place at which two straight lines, one through
 * what comes before and one through what comes after, differ most clearly in slope.
 *
 * @param at the place, s
 * @param before line through what comes before
 * @param after line through what comes after
 */
record Bend(double at, FitResult before, FitResult after) {
  private static final double SHORTEST = 1.5;
  private static final double LONGEST = 15;
  private static final int MOST_BINS = 1_500;
  private static final double BIN = 0.05;
  private static final int PLACES_IN_SPAN = 15;

  /** A slow approach to the maximum is no straight line: the bend seems earlier by such a share. */
  private static final double CURVED = 0.12;

  private static final double FALLEN = 0.5;
  private static final double FALLEN_SHARE = 0.015;

  private static final double CLEAR = 3.5;

  static Optional<PumpOff> in(Held held, Fall fall) {
    Curve curve = held.curve();
    double length = curve.lastTime() - curve.firstTime();
    Curve bins = curve.binned(Math.max(BIN, length / MOST_BINS));
    double span = span(held, fall);
    double least = fall.highest() - 0.5 * fall.kilopascals() - 3 * held.scatter();
    Bend best = null;
    for (double t = firstAbove(bins, least); t <= fall.from() + span; t += span / PLACES_IN_SPAN) {
      Optional<Bend> here = at(bins, t, span);
      if (here.isPresent() && (best == null || here.get().clearness() > best.clearness())) {
        best = here.get();
      }
    }
    return Optional.ofNullable(best)
        .filter(b -> b.clearness() > CLEAR)
        .map(b -> b.place(span, fall));
  }

  /** Long enough to tell the slope of the fall to a tenth from the noise, s. */
  private static double span(Held held, Fall fall) {
    double scatter = held.scatter();
    double rate = fall.rate(held.end());
    double cube = 1_200 * scatter * scatter * held.curve().period() / (rate * rate);
    return Math.max(SHORTEST, Math.min(LONGEST, Math.cbrt(cube)));
  }

  private static double firstAbove(Curve curve, double level) {
    int i = 0;
    while (i < curve.size() - 1 && curve.level(i) < level) {
      i++;
    }
    return curve.time(i);
  }

  private static Optional<Bend> at(Curve bins, double place, double span) {
    Optional<FitResult> before = line(bins.between(place - span, place), place);
    Optional<FitResult> after = line(bins.between(place, place + span), place);
    return before.flatMap(b -> after.map(a -> new Bend(place, b, a)));
  }

  private static Optional<FitResult> line(Curve part, double place) {
    return part.size() < 4
        ? Optional.empty()
        : LinearLeastSquares.polynomial(part.points(), 1, place).result();
  }

  private double drop() {
    return before.parameter(1) - after.parameter(1);
  }

  /** Change of slope in its standard errors. */
  private double clearness() {
    boolean falls = after.parameter(1) < 0;
    double error = Math.hypot(before.standardError(1), after.standardError(1));
    return falls ? drop() / Math.max(1e-9, error) : Double.NEGATIVE_INFINITY;
  }

  /** Where the two lines meet, if that is near. */
  private PumpOff place(double span, Fall fall) {
    double apart = (after.parameter(0) - before.parameter(0)) / drop();
    double near = Math.max(-span / 2, Math.min(span / 2, apart));
    double error = Math.hypot(before.standardError(0), after.standardError(0)) / drop();
    return new PumpOff(at + near, Math.min(span / 2, error + CURVED * span), sign(fall));
  }

  /** Where the vacuum was on its way down already, something else was the start of it. */
  private PumpOff.Sign sign(Fall fall) {
    double fallen = fall.highest() - before.parameter(0);
    boolean begun = fallen > FALLEN + FALLEN_SHARE * fall.kilopascals();
    return begun ? PumpOff.Sign.LATER_BEND : PumpOff.Sign.BEND;
  }
}
