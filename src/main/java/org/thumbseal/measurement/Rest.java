package org.thumbseal.measurement;

import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import org.thumbseal.measurement.AmbientPressure.Origin;
import org.thumbseal.measurement.Quality.Start;
import org.thumbseal.measurement.Steps.Level;
import org.thumbseal.wire.WireRecord.Reference;

/**
 * The levels before the inlet was blocked: pump off (the zero) and pump running with the inlet
 * open.
 *
 * @param idle the quiet start, where there is one
 * @param open what came last before the blocking; of no length where the record begins with it
 * @param openMean mean over its last 2 s at most, on the sensor's own zero, kPa
 * @param openError standard error of that mean, kPa
 * @param fall how far the vacuum came down within the last second before the blocking, kPa
 * @param isFlat whether the level before the blocking is one, and not the begin of the climb
 */
record Rest(
    Optional<Level> idle,
    Level open,
    double openMean,
    double openError,
    double fall,
    boolean isFlat) {
  /** The open vacuum is the mean over this much, s. */
  static final double OPEN_SPAN = 2;

  /** A level that lasts shorter than this is not steady, s. */
  private static final double SHORTEST_QUIET = 0.4;

  /** The zero is taken from this much before the pump was switched on, s. */
  private static final double ZERO_SPAN = 10;

  /** More than this within a second is no open phase, kPa. */
  private static final double LARGEST_FALL = 1.5;

  /** A fall has come to its end within this of the lowest level, kPa. */
  private static final double SETTLED = 1;

  /** A record that begins higher than this and climbs at once begins within a blocking, kPa. */
  private static final double HIGHEST_CLIMBING_LEVEL = 1.5;

  /** Samples of one level, kPa. */
  private static final double FLAT = 0.3;

  /** A record that begins higher begins within a blocking, kPa. */
  private static final double HIGHEST_FIRST_LEVEL = 10;

  private static final double BLOCK = 0.2;
  private static final int FEWEST_BLOCKS = 6;

  /** A capture that begins at the blocking: its first level may be part of the rise already. */
  private static final int FIRST_SAMPLES = 3;

  static Rest before(Curve curve, double onset) {
    Curve quiet = curve.between(curve.firstTime(), onset);
    if (quiet.size() <= FIRST_SAMPLES) {
      return beginning(quiet.isEmpty() ? curve.first() : quiet);
    }
    Curve settled = settled(quiet);
    List<Level> levels = levels(settled);
    Level open = levels.get(levels.size() - 1);
    Optional<Level> idle =
        levels.stream()
            .limit(levels.size() - 1)
            .filter(l -> l.length() >= SHORTEST_QUIET && l.mean() < open.mean())
            .min(Comparator.comparingDouble(Level::mean));
    double pumpOn = idle.map(Level::to).orElse(settled.firstTime());
    Curve last = quiet.between(Math.max(pumpOn, onset - OPEN_SPAN), onset);
    if (last.isEmpty()) {
      return beginning(quiet);
    }
    return new Rest(
        idle, open, last.mean(), standardError(last), fall(quiet, onset), isFlat(quiet));
  }

  /** By its step the start of the pump is known best; by its strokes where they hide the step. */
  private static List<Level> levels(Curve settled) {
    List<Level> steps = Steps.of(settled);
    return steps.size() > 1
        ? steps
        : Strokes.of(settled).filter(l -> l.get(0).mean() < l.get(1).mean()).orElse(steps);
  }

  /** Without the fall from a test before: what comes after the first low level. */
  private static Curve settled(Curve quiet) {
    Curve smooth = quiet.binned(0.1);
    double low = smooth.lowest() + SETTLED;
    int first = 0;
    while (smooth.level(first) > low) {
      first++;
    }
    return quiet.between(smooth.time(first) - 0.05, quiet.lastTime() + 1e-9);
  }

  private static Rest beginning(Curve first) {
    Level level = new Level(first.firstTime(), first.lastTime(), first.mean());
    return new Rest(
        Optional.empty(),
        level,
        first.level(0),
        Math.max(0.2, first.deviation()),
        0,
        isFlat(first));
  }

  private static boolean isFlat(Curve curve) {
    return curve.size() > 2 && curve.highest() - curve.lowest() < FLAT;
  }

  /** The ambient pressure that an absolute sensor reads at rest. */
  Optional<AmbientPressure> air(Setup setup, Quality.Zero zero) {
    double air = -zero.kilopascals();
    boolean known =
        setup.reference() == Reference.ABSOLUTE
            && idle.isPresent()
            && AmbientPressure.isPlausible(air);
    return known
        ? Optional.of(
            new AmbientPressure(air, Math.abs(air) * Uncalibrated.RELATIVE, Origin.AT_REST))
        : Optional.empty();
  }

  /** The part of the quiet start that the zero is taken from. */
  Optional<Curve> zeroPart(Curve curve) {
    return idle.map(l -> curve.between(Math.max(l.from(), l.to() - ZERO_SPAN), l.to()));
  }

  private static double fall(Curve quiet, double onset) {
    Curve last = quiet.between(onset - 1, onset).binned(0.1);
    double highest = Double.NEGATIVE_INFINITY;
    double fall = 0;
    for (int i = 0; i < last.size(); i++) {
      highest = Math.max(highest, last.level(i));
      fall = Math.max(fall, highest - last.level(i));
    }
    return fall;
  }

  /** What the blocking began from, with the open vacuum in kPa. */
  Start start(double openVacuum) {
    if (fall > LARGEST_FALL) {
      return Start.FALLING;
    }
    if (open.length() >= SHORTEST_QUIET) {
      return Start.STEADY;
    }
    double highest = isFlat ? HIGHEST_FIRST_LEVEL : HIGHEST_CLIMBING_LEVEL;
    return openVacuum > highest ? Start.WITHIN : Start.FIRST_SAMPLES;
  }

  /** Whether there was a steady level before the blocking at all. */
  boolean hasOpen() {
    return open.length() > 0.1;
  }

  /** From means of 0.2 s: strokes come and go within one, and are no scatter of the mean. */
  private static double standardError(Curve curve) {
    Curve means = curve.binned(BLOCK);
    Curve used = means.size() < FEWEST_BLOCKS ? curve : means;
    return used.deviation() / Math.sqrt(Math.max(1, used.size()));
  }
}
