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
