package org.thumbseal.measurement;

import java.util.Optional;
import org.thumbseal.fit.FitResult;
import org.thumbseal.fit.LinearLeastSquares;

/**
 * Where the vacuum, freed of ripple without delay, first stands at a level: a parabola through a
 * window around the place, moved until it is centred there.
 *
 * @param seconds device time, s
 * @param slope of the vacuum there, kPa/s
 * @param levelError standard error of the vacuum there, kPa
 */
record Crossing(double seconds, double slope, double levelError) {
  private static final double SMOOTHED = 0.1;
  private static final double REACH_IN_RISE_TIMES = 0.1;
  private static final double SHORTEST_REACH = 0.15;
  private static final double LONGEST_REACH = 1.5;
  private static final int FEWEST_ON_A_SIDE = 4;
  private static final int PARABOLA = 2;
  private static final int ROUNDS = 5;
  private static final int MOST = 600;

  /** The first crossing of a level by a curve that begins at the blocking, if there is one. */
  static Optional<Crossing> of(Curve blocked, double level, double onset) {
    return firstGuess(blocked, level)
        .flatMap(
            t ->
                refined(blocked, level, new Place(t, t - onset))
                    .or(() -> between(blocked, level, t)));
  }

  /** Where the rise is too steep for a window: between the samples on both sides of the level. */
  private static Optional<Crossing> between(Curve blocked, double level, double guess) {
    int after = blocked.indexAt(guess - SMOOTHED);
    while (after < blocked.size() && blocked.level(after) < level) {
      after++;
    }
    while (after > 0 && after < blocked.size() && blocked.level(after - 1) >= level) {
      after--;
    }
    if (after == 0 || after == blocked.size()) {
      return Optional.empty();
    }
    double apart = blocked.time(after) - blocked.time(after - 1);
    double slope = (blocked.level(after) - blocked.level(after - 1)) / apart;
    double time = blocked.time(after) - (blocked.level(after) - level) / slope;
    return Optional.of(new Crossing(time, slope, apart * slope / Math.sqrt(12)));
  }

  private record Place(double time, double sinceOnset) {}

  private static Optional<Double> firstGuess(Curve blocked, double level) {
    Curve smooth = blocked.binned(SMOOTHED);
    for (int i = 0; i < smooth.size(); i++) {
      if (smooth.level(i) >= level) {
        return Optional.of(smooth.time(i));
      }
    }
    return Optional.empty();
  }

  private static Optional<Crossing> refined(Curve blocked, double level, Place guess) {
    double reach = reach(blocked, guess);
    Optional<Crossing> found = Optional.empty();
    double time = guess.time();
    for (int round = 0; round < ROUNDS; round++) {
      Optional<Crossing> next = step(blocked, level, time, reach);
      if (next.isEmpty()) {
        return found;
      }
      found = next;
      time = next.get().seconds();
    }
    return found;
  }

  private static double reach(Curve blocked, Place guess) {
    double wanted = REACH_IN_RISE_TIMES * guess.sinceOnset();
    double least = Math.max(SHORTEST_REACH, FEWEST_ON_A_SIDE * blocked.period());
    return Math.min(Math.max(wanted, least), Math.max(LONGEST_REACH, least));
  }

  private static Optional<Crossing> step(Curve blocked, double level, double time, double reach) {
    Curve window = blocked.between(time - reach, time + reach);
    if (window.size() < 2 * FEWEST_ON_A_SIDE) {
      return Optional.empty();
    }
    return LinearLeastSquares.robustPolynomial(window.thinned(MOST).points(), PARABOLA, time)
        .result()
        .flatMap(f -> root(f, level, time, reach));
  }

  private static Optional<Crossing> root(FitResult fit, double level, double time, double reach) {
    double slope = fit.parameter(1);
    double shift = (level - fit.parameter(0)) / slope;
    for (int i = 0; i < ROUNDS; i++) {
      shift = (level - fit.parameter(0) - fit.parameter(2) * shift * shift) / slope;
    }
    boolean usable = slope > 0 && Math.abs(shift) <= reach;
    return usable
        ? Optional.of(new Crossing(time + shift, slope, fit.standardError(0)))
        : Optional.empty();
  }
}
