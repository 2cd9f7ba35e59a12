package org.thumbseal.phase;

import java.util.ArrayDeque;
import java.util.Arrays;
import java.util.Deque;
import java.util.Iterator;
import java.util.function.DoublePredicate;

/** The slots of the last seconds: enough to tell a level, its noise and its growth. */
final class Trace {
  private static final double SPAN = 6.0;
  private static final int LEVEL_SLOTS = 3;

  private final Deque<Slot> slots = new ArrayDeque<>();

  void clear() {
    slots.clear();
  }

  boolean isEmpty() {
    return slots.isEmpty();
  }

  void add(Slot slot) {
    slots.addLast(slot);
    while (slot.seconds() - slots.getFirst().seconds() > SPAN) {
      slots.removeFirst();
    }
  }

  /** Drops what is older than a time. */
  void forgetBefore(double seconds) {
    while (!slots.isEmpty() && slots.getFirst().seconds() < seconds) {
      slots.removeFirst();
    }
  }

  /** Seconds from the oldest slot to now. */
  double span() {
    return slots.isEmpty() ? 0 : slots.getLast().seconds() - slots.getFirst().seconds();
  }

  /** The newest level, averaged over three slots to be rid of stroke ripple. */
  double level() {
    double sum = 0;
    int n = 0;
    for (Iterator<Slot> i = slots.descendingIterator(); i.hasNext() && n < LEVEL_SLOTS; n++) {
      sum += i.next().kilopascals();
    }
    return sum / n;
  }

  /** Median of the slots at least {@code age} seconds old; of the two oldest where none is. */
  double medianOlderThan(double age) {
    double[] old = levels(a -> a >= age);
    return median(old.length > 0 ? old : firstTwo());
  }

  private double[] firstTwo() {
    return slots.stream().limit(2).mapToDouble(Slot::kilopascals).toArray();
  }

  /** Mean of the slots whose age is in [from, to) seconds; not a number where there is none. */
  double meanOfAges(double from, double to) {
    return Arrays.stream(levels(a -> a >= from && a < to)).average().orElse(Double.NaN);
  }

  /** Highest less lowest slot of the last seconds; infinite where the trace is shorter. */
  double spreadOver(double seconds) {
    if (span() < seconds) {
      return Double.POSITIVE_INFINITY;
    }
    double[] young = levels(a -> a <= seconds);
    Arrays.sort(young);
    return young[young.length - 1] - young[0];
  }

  /** Robust standard deviation of the slots older than 0.3 s, kPa; 0 where there are too few. */
  double noise() {
    double[] old = levels(a -> a >= 0.3);
    if (old.length < 4) {
      return 0;
    }
    double middle = median(old);
    return 1.4826 * median(Arrays.stream(old).map(v -> Math.abs(v - middle)).toArray());
  }

  private double[] levels(DoublePredicate age) {
    double now = slots.isEmpty() ? 0 : slots.getLast().seconds();
    return slots.stream()
        .filter(s -> age.test(now - s.seconds()))
        .mapToDouble(Slot::kilopascals)
        .toArray();
  }

  private static double median(double[] values) {
    Arrays.sort(values);
    int n = values.length;
    return n == 0 ? Double.NaN : (values[(n - 1) / 2] + values[n / 2]) / 2;
  }
}
