package org.thumbseal.simulate;

/**
 * The sensor's counter and clock.
 *
 * @param counterStart counter of the first sample, 0 to 2^32-1
 * @param microsStart device clock at the first sample, microseconds, 0 to 2^32-1
 * @param rateError of the clock: 1e-4 runs 100 ppm fast
 * @param jitter rms by which samples miss their regular time, s; the time stamp tells
 */
public record Ticks(long counterStart, long microsStart, double rateError, double jitter) {
  private static final long MASK = 0xFFFF_FFFFL;

  /** A clock without error that starts at 0. */
  public static final Ticks PERFECT = new Ticks(0, 0, 0, 0);

  /** Refuses starts outside 32 bit and a clock that is more than 10 % off. */
  public Ticks {
    Demand.that((counterStart & ~MASK) == 0, "counter start must be 0 to 4294967295");
    Demand.that((microsStart & ~MASK) == 0, "clock start must be 0 to 4294967295 us");
    Demand.that(Math.abs(rateError) < 0.1, "clock rate error must be below 10 %");
    Demand.notNegative(jitter, "jitter");
  }

  /** The counter after so many samples, wrapped. */
  long counter(long samples) {
    return counterStart + samples & MASK;
  }

  /** The device clock, microseconds, wrapped, so many true seconds after the first sample. */
  long stamp(double seconds) {
    return microsStart + Math.round(seconds * (1 + rateError) * 1e6) & MASK;
  }

  /** True time of the sample of a number at a nominal rate, without jitter, s. */
  double due(long number, double hertz) {
    return number / (hertz * (1 + rateError));
  }

  /** The same clock after the sensor began anew. */
  Ticks afterRestart() {
    return new Ticks(0, BOOT_MICROS, rateError, jitter);
  }

  private static final long BOOT_MICROS = 412_000;
}
