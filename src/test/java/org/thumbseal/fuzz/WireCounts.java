package org.thumbseal.fuzz;

import java.util.Locale;

/**
 * What became of the spoilt lines of one kind. A line that is, byte for byte, one that was really
 * sent does not count as spoilt.
 */
final class WireCounts {
  private static final double BY_CHANCE = 1.0 / 65_536;

  /** Once in a million campaigns that are as they should be. */
  private static final double INCREDIBLE = 1e-6;

  private long lines;
  private long formed;
  private long passed;
  private long samples;
  private long records;

  void line(boolean wellFormed, boolean checksumGood, boolean record, boolean sample) {
    lines++;
    formed += wellFormed ? 1 : 0;
    passed += checksumGood ? 1 : 0;
    records += record ? 1 : 0;
    samples += sample ? 1 : 0;
  }

  long lines() {
    return lines;
  }

  long passed() {
    return passed;
  }

  /** Of the lines that have a body and four digits, so many pass if all sums are equally likely. */
  double expected() {
    return formed * BY_CHANCE;
  }

  /** Whether so many could have passed by nothing but chance. */
  boolean isCredible() {
    return atLeast(passed, expected()) > INCREDIBLE;
  }

  /** Whether so few could have. */
  boolean isCrediblyFew() {
    return 1 - atLeast(passed + 1, expected()) > INCREDIBLE;
  }

  /** The probability that a Poisson variable of this mean is not below the count. */
  static double atLeast(long count, double mean) {
    double below = 0;
    double term = Math.exp(-mean);
    for (long k = 0; k < count; k++) {
      below += term;
      term *= mean / (k + 1);
    }
    return Math.max(0, 1 - below);
  }

  static String head() {
    return String.format(
        Locale.ROOT,
        "%-20s %10s %10s %8s %9s %8s %8s%n",
        "kind",
        "lines",
        "formed",
        "passed",
        "expected",
        "records",
        "samples");
  }

  String row(WireKind kind) {
    return String.format(
        Locale.ROOT,
        "%-20s %10d %10d %8d %9.1f %8d %8d%n",
        kind.name().toLowerCase(Locale.ROOT),
        lines,
        formed,
        passed,
        kind == WireKind.RESEALED ? formed : kind.isAlwaysNoticed() ? 0 : expected(),
        records,
        samples);
  }
}
