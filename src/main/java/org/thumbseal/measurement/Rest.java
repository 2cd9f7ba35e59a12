package org.thumbseal.measurement;

import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import org.thumbseal.measurement.Steps.Level;

/**
 * The levels before the inlet was blocked: pump off (the zero) and pump running with the inlet
 * open.
 *
 * @param idle the quiet start, where there is one
 * @param open what came last before the blocking; of no length where the record begins with it
 * @param openMean mean over its last 2 s at most, on the sensor's own zero, kPa
 * @param openError standard error of that mean, kPa
 */
record Rest(Optional<Level> idle, Level open, double openMean, double openError) {
  /** The open vacuum is the mean over this much, s. */
  private static final double OPEN_SPAN = 2;

  /** A level that lasts shorter than this is not steady, s. */
  private static final double SHORTEST_QUIET = 0.4;

  /** The zero is taken from this much before the pump was switched on, s. */
  private static final double ZERO_SPAN = 10;

  /** A capture that begins at the blocking: its first level may be part of the rise already. */
  private static final int FIRST_SAMPLES = 3;

  static Rest before(Curve curve, double onset) {
    Curve quiet = curve.between(curve.firstTime(), onset);
    if (quiet.size() <= FIRST_SAMPLES) {
      return beginning(quiet.isEmpty() ? curve.between(curve.firstTime(), onset + 1e-6) : quiet);
    }
    List<Level> levels = Steps.of(quiet);
    Level open = levels.get(levels.size() - 1);
    Optional<Level> idle =
        levels.stream()
            .limit(levels.size() - 1)
            .filter(l -> l.length() >= SHORTEST_QUIET && l.mean() < open.mean())
            .min(Comparator.comparingDouble(Level::mean));
    Curve last = quiet.between(Math.max(open.from(), onset - OPEN_SPAN), onset);
    return new Rest(idle, open, last.mean(), standardError(last));
  }

  private static Rest beginning(Curve first) {
    Level level = new Level(first.firstTime(), first.lastTime(), first.mean());
    return new Rest(Optional.empty(), level, first.level(0), Math.max(0.2, first.deviation()));
  }

  /** The part of the quiet start that the zero is taken from. */
  Optional<Curve> zeroPart(Curve curve) {
    return idle.map(l -> curve.between(Math.max(l.from(), l.to() - ZERO_SPAN), l.to()));
  }

  /** Whether there was a steady level before the blocking at all. */
  boolean hasOpen() {
    return open.length() > 0.1;
  }

  private static double standardError(Curve curve) {
    return curve.deviation() / Math.sqrt(Math.max(1, curve.size()));
  }
}
