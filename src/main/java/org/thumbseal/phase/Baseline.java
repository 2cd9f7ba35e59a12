package org.thumbseal.phase;

import java.util.Optional;

/** The level and noise before a test, and whether a slot still belongs to them. */
final class Baseline {
  private static final double NARROWEST_BAND = 1.0;
  private static final double WIDEST_BAND = 3;
  private static final double BAND_IN_SIGMAS = 5;
  private static final double UNDECIDED = 0.3;

  private static final double STEADY_FOR = 0.5;
  private static final double STEADY = 1;

  private final Trace trace = new Trace();
  private final PumpSwitch pump = new PumpSwitch();
  private double awaited = Double.POSITIVE_INFINITY;

  void clear() {
    trace.clear();
    awaited = Double.POSITIVE_INFINITY;
  }

  /** After a test that broke off the inlet is still blocked: no baseline until it is open. */
  void awaitBelow(double kilopascals) {
    awaited = kilopascals;
  }

  /**
   * Takes a slot while an open inlet is waited for; false as soon as there is a steady low level.
   */
  boolean isAwaited(Slot slot) {
    if (awaited == Double.POSITIVE_INFINITY) {
      return false;
    }
    trace.add(slot);
    if (slot.kilopascals() < awaited && trace.spreadOver(STEADY_FOR) < STEADY) {
      awaited = Double.POSITIVE_INFINITY;
    }
    return true;
  }

  /** Begins anew at a level that was reached in a step. */
  void restart(Slot slot, Phase phase) {
    trace.clear();
    trace.add(slot);
    pump.set(phase, slot.seconds());
  }

  boolean leaves(Slot slot) {
    double band = Math.max(NARROWEST_BAND, Math.min(WIDEST_BAND, BAND_IN_SIGMAS * trace.noise()));
    return !trace.isEmpty() && slot.kilopascals() > level() + band;
  }

  /** Takes a slot of the baseline; says so when the pump was switched on or off. */
  Optional<Phase> add(Slot slot) {
    trace.add(slot);
    return pump.step(trace, slot.seconds());
  }

  double noise() {
    return trace.noise();
  }

  double level() {
    return trace.medianOlderThan(UNDECIDED);
  }
}
