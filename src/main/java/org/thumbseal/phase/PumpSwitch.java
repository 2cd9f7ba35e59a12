package org.thumbseal.phase;

import java.util.Optional;

/**
 * Tells a running pump from a resting one by the small step of the open vacuum, for the people who
 * watch; the measurement later looks for the same step in the whole record.
 */
final class PumpSwitch {
  private static final double RECENT = 0.8;
  private static final double BEFORE = 2.8;
  private static final double SMALLEST_STEP = 0.04;
  private static final double SIGNIFICANT = 2.0;

  private Phase phase = Phase.IDLE;
  private double quietUntil;

  Phase phase() {
    return phase;
  }

  void set(Phase now, double seconds) {
    phase = now;
    quietUntil = seconds + BEFORE;
  }

  /** The new phase, where the last second stands apart from the two before it. */
  Optional<Phase> step(Trace trace, double seconds) {
    if (seconds < quietUntil || trace.span() < BEFORE) {
      return Optional.empty();
    }
    double step = trace.meanOfAges(0, RECENT) - trace.meanOfAges(RECENT, BEFORE);
    boolean real = Math.abs(step) > SMALLEST_STEP + SIGNIFICANT * trace.noise();
    Phase next = step > 0 ? Phase.OPEN : Phase.IDLE;
    if (!real || next == phase) {
      return Optional.empty();
    }
    set(next, seconds);
    return Optional.of(next);
  }
}
