package org.thumbseal.measurement;

import java.util.Optional;

/**
 * The moment from which a blocked jar is left to itself: the pump was switched off, or its hose
 * pinched.
 *
 * <p>It shows as a fall from the maximum that begins with a bend, or, where the jar is tight and
 * nothing falls, by the end of the strokes of the pump.
 *
 * @param seconds device time, s
 * @param standardUncertainty s
 * @param sign by which it was told
 */
record PumpOff(double seconds, double standardUncertainty, Sign sign) {
  /** What a pump that leaves the jar alone is told by. */
  enum Sign {
    BEND,
    LATER_BEND,
    STROKES_END,
    SAID
  }

  /** A vacuum that comes down by less may be a pump that gets warm, kPa. */
  private static final double SMALLEST_FALL = 0.15;

  private static final double FALL_IN_SIGMAS = 8;
  private static final double FALL_IN_STEPS = 1.6;
  private static final double MEAN_SPAN = 1;
  private static final double SHORTEST = 3;

  /** The hand that opens the inlet may have moved before, s. */
  private static final double GUARD = 0.06;

  /**
   * A blocked inlet.
   *
   * @param curve from the blocking to the release, zero taken off
   * @param resolution step of the readings, kPa
   * @param noise of the readings at rest, kPa
   */
  record Held(Curve curve, double resolution, double noise) {
    Held {
      curve = curve.isEmpty() ? curve : curve.between(curve.firstTime(), curve.lastTime() - GUARD);
    }

    double scatter() {
      return Math.max(noise, resolution / 3);
    }

    double end() {
      return curve.lastTime();
    }
  }

  static Optional<PumpOff> in(Held held) {
    if (held.curve().size() < 10 || held.end() - held.curve().firstTime() < SHORTEST) {
      return Optional.empty();
    }
    Fall fall = Fall.of(held);
    return fall.isReal(held)
        ? Bend.in(held, fall).filter(bend -> !new Unrest(held).goOnAfter(bend.seconds()))
        : new Unrest(held).end(fall.highest());
  }

  /**
   * How far the vacuum has come down in the end.
   *
   * @param highest mean of a second, kPa
   * @param kilopascals from there to the last second
   * @param from last time at which it stood near the highest, s
   */
  record Fall(double highest, double kilopascals, double from) {
    static Fall of(Held held) {
      Curve curve = held.curve();
      Curve means = curve.binned(MEAN_SPAN);
      double highest = means.highest();
      double last = curve.between(held.end() - MEAN_SPAN, held.end() + 1e-9).mean();
      double near = highest - 0.2 * (highest - last);
      int i = means.size() - 1;
      while (i > 0 && means.level(i) < near) {
        i--;
      }
      return new Fall(highest, highest - last, means.time(i));
    }

    boolean isReal(Held held) {
      double inSecond = Math.max(1, MEAN_SPAN / Math.max(1e-3, held.curve().period()));
      double least = FALL_IN_SIGMAS * held.noise() / Math.sqrt(inSecond);
      return kilopascals
          > Math.max(SMALLEST_FALL, Math.max(least, FALL_IN_STEPS * held.resolution()));
    }

    /** kPa/s, roughly. */
    double rate(double end) {
      return 0.8 * kilopascals / Math.max(0.5, end - from);
    }
  }
}
