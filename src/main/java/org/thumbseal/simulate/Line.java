package org.thumbseal.simulate;

/**
 * The way from sensor to host. What the sensor sends at power-up and its first sample always arrive
 * whole, so that the truth has a first sample to count from.
 *
 * @param burst lines are handed over in bursts this many seconds apart, 0 to 1
 * @param lost part of the lines that never arrive, 0 to 1
 * @param corrupt part of the lines that arrive damaged, 0 to 1
 * @param halfFirst whether the first line received is the tail of one
 */
public record Line(double burst, double lost, double corrupt, boolean halfFirst) {
  /** Every line whole and at once. */
  public static final Line CLEAN = new Line(0, 0, 0, false);

  /** Refuses values out of range. */
  public Line {
    Demand.fraction(burst, "burst interval in s");
    Demand.fraction(lost, "part of lost lines");
    Demand.fraction(corrupt, "part of corrupt lines");
  }
}
