package org.thumbseal.phase;

import java.util.function.Consumer;

/**
 * Gathers samples into slots of 50 ms (or of one sample, where they come slower), after a median of
 * three that takes out single-sample spikes. So the detector sees the same stream at any rate.
 */
final class Slots {
  private static final double LENGTH = 0.05;

  private final Consumer<Slot> slots;
  private double older = Double.NaN;
  private double old = Double.NaN;
  private double oldSeconds;
  private double start;
  private double sum;
  private int count;

  Slots(Consumer<Slot> slots) {
    this.slots = slots;
  }

  void accept(double seconds, double kilopascals) {
    if (!Double.isNaN(old)) {
      gather(oldSeconds, Double.isNaN(older) ? old : medianOfThree(older, old, kilopascals));
    }
    older = old;
    old = kilopascals;
    oldSeconds = seconds;
  }

  /** Hands on what is still held back, and forgets everything. */
  void flush() {
    if (!Double.isNaN(old)) {
      gather(oldSeconds, old);
    }
    close();
    older = Double.NaN;
    old = Double.NaN;
  }

  private void gather(double seconds, double kilopascals) {
    if (count > 0 && seconds - start >= LENGTH) {
      close();
    }
    if (count == 0) {
      start = seconds;
    }
    sum += kilopascals;
    count++;
  }

  private void close() {
    if (count > 0) {
      slots.accept(new Slot(start, sum / count));
    }
    sum = 0;
    count = 0;
  }

  private static double medianOfThree(double a, double b, double c) {
    return Math.max(Math.min(a, b), Math.min(Math.max(a, b), c));
  }
}
