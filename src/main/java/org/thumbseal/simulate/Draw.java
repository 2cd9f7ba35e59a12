package org.thumbseal.simulate;

import java.util.List;
import java.util.Random;

/**
 * Seeded chance for one purpose, so that more noise draws never move a line fault.
 *
 * <p>{@link Random} because its algorithms, the Gaussian one too, are part of its specification:
 * the same numbers on every machine and Java version.
 */
final class Draw {
  private final Random random;

  Draw(long seed, String purpose) {
    this.random = new Random(mix(seed + 0x9E3779B97F4A7C15L * purpose.hashCode()));
  }

  /** A seed that belongs to another one, for what happened to the same thing on another day. */
  static long another(long seed) {
    return mix(seed ^ 0x5851F42D4C957F2DL);
  }

  /** Uniform between two bounds, in the logarithm: each octave is as likely as the next. */
  double betweenLog(double low, double high) {
    return StrictMath.exp(between(StrictMath.log(low), StrictMath.log(high)));
  }

  /** Uniform between two bounds. */
  double between(double low, double high) {
    return low + (high - low) * random.nextDouble();
  }

  /** Normal with mean 0 and standard deviation 1. */
  double gaussian() {
    return random.nextGaussian();
  }

  boolean chance(double probability) {
    return random.nextDouble() < probability;
  }

  /** A whole number from 0 to below a bound. */
  int below(int bound) {
    return random.nextInt(bound);
  }

  <T> T oneOf(List<T> choices) {
    return choices.get(below(choices.size()));
  }

  /** Spreads neighbouring seeds apart (finaliser of SplitMix64: Steele, Lea, Flood 2014). */
  private static long mix(long seed) {
    long z = (seed ^ (seed >>> 30)) * 0xBF58476D1CE4E5B9L;
    z = (z ^ (z >>> 27)) * 0x94D049BB133111EBL;
    return z ^ (z >>> 31);
  }
}
