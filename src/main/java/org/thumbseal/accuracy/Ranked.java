package org.thumbseal.accuracy;

import java.util.Locale;
import java.util.stream.DoubleStream;

/** Sizes in order. */
final class Ranked {
  private final double[] sorted;

  private Ranked(double[] sorted) {
    this.sorted = sorted;
  }

  static Ranked of(DoubleStream values) {
    return new Ranked(values.map(Math::abs).sorted().toArray());
  }

  int count() {
    return sorted.length;
  }

  boolean isEmpty() {
    return sorted.length == 0;
  }

  /** The size that a share of all does not exceed (nearest rank). */
  double within(double share) {
    return sorted[Math.max(0, (int) Math.ceil(share * sorted.length) - 1)];
  }

  /** Share of all that do not exceed a size. */
  double shareWithin(double limit) {
    return DoubleStream.of(sorted).filter(v -> v <= limit).count() / (double) sorted.length;
  }

  static String text(String format, Object... values) {
    return String.format(Locale.ROOT, format, values);
  }
}
