package org.thumbseal.daemon;

import java.util.HashSet;
import java.util.Set;

/**
 * Tells from a sensor's counter whether another program reads the same port: each takes bytes away
 * from the other, so that more readings are missing than lines are broken, in holes of all sizes,
 * although this program reads all the time. A noisy line breaks a line for each reading it costs; a
 * sensor that leaves readings out does so in ones and twos; a computer that comes too late reads
 * late.
 */
final class SharedPort {
  /** What the holes say. */
  enum Sign {
    /** Nothing, or nothing new. */
    NONE,
    /**
     * There are many, for the first time in a while; it may be a sensor that leaves readings out.
     */
    HOLES,
    /** Only a second reader makes such holes. */
    SHARED
  }

  /** Faster than any buffer of the system fills, microseconds. */
  private static final long LATE = 500_000;

  private static final long WINDOW = 10_000_000;
  private static final int MANY_HOLES = 8;
  private static final int MANY_SIZES = 3;
  private static final long UINT32 = 1L << 32;

  /** A counter that is further on has begun anew. */
  private static final long RESTART = 1L << 20;

  private final Set<Long> sizes = new HashSet<>();
  private long windowBegan;
  private long lastRead;
  private long counter = -1;
  private int broken;
  private int gaps;
  private int holes;
  private boolean late;

  /** The port was read, with or without bytes. */
  void read(long micros) {
    late |= micros - lastRead > LATE;
    lastRead = micros;
    if (micros - windowBegan > WINDOW) {
      windowBegan = micros;
      sizes.clear();
      gaps = 0;
      holes = 0;
    }
  }

  /** A line that cannot be used. */
  void broken() {
    broken++;
  }

  /** A good reading with this counter; what is to be thought of the port by now. */
  Sign at(long next) {
    int before = holes;
    long missing = Math.floorMod(next - counter, UINT32) - 1;
    if (counter >= 0 && missing > 0 && missing < RESTART) {
      gap(missing);
    }
    counter = next;
    broken = 0;
    late = false;
    if (holes >= MANY_HOLES && 3 * holes >= gaps && sizes.size() >= MANY_SIZES) {
      return Sign.SHARED;
    }
    return holes == MANY_HOLES && before < MANY_HOLES ? Sign.HOLES : Sign.NONE;
  }

  private void gap(long missing) {
    gaps++;
    if (missing > broken && !late) {
      holes++;
      sizes.add(missing);
    }
  }
}
