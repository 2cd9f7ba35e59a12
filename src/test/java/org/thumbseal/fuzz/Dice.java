package org.thumbseal.fuzz;

import java.util.List;
import java.util.SplittableRandom;
import java.util.random.RandomGenerator;

/** The random choices of one input; the same seed makes the same input again. */
public final class Dice {
  private final RandomGenerator random;

  /** Dice whose throws follow from this number alone. */
  public Dice(long seed) {
    this.random = new SplittableRandom(seed);
  }

  /** 0 to bound - 1; 0 where the bound leaves no choice. */
  public int below(int bound) {
    return bound <= 1 ? 0 : random.nextInt(bound);
  }

  /** Both ends included. */
  public int between(int low, int high) {
    return low + below(high - low + 1);
  }

  /** True once in so many throws. */
  public boolean oneIn(int throwsNeeded) {
    return below(throwsNeeded) == 0;
  }

  /** Any 64 bits. */
  public long bits() {
    return random.nextLong();
  }

  /** One of them. */
  public <T> T of(List<T> choices) {
    return choices.get(below(choices.size()));
  }

  /** So many bytes of any value. */
  public byte[] bytes(int count) {
    byte[] bytes = new byte[count];
    random.nextBytes(bytes);
    return bytes;
  }
}
