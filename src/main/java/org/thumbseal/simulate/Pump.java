package org.thumbseal.simulate;

/**
 * A reciprocating pump limited by its dead volume: throughput is speed times (inlet pressure -
 * ultimate pressure), and the ultimate pressure is a fixed part of ambient.
 *
 * @param speed S0 at the running motor, m3/s
 * @param ultimateFraction ultimate pressure over ambient pressure, 0 to 1
 * @param strokeHertz strokes a second, Hz, above 0
 * @param restingLeak effective area (discharge coefficient times area) through which the resting
 *     pump lets air back, m2
 */
public record Pump(double speed, double ultimateFraction, double strokeHertz, double restingLeak) {
  private static final double LITRES_A_MINUTE = 1 / 60_000.0;

  /** Refuses values out of range. */
  public Pump {
    Demand.notNegative(speed, "pump speed");
    Demand.fraction(ultimateFraction, "ultimate pressure over ambient");
    Demand.that(strokeHertz > 0, "stroke frequency must be above 0 Hz");
    Demand.notNegative(restingLeak, "leak of the resting pump");
  }

  /** A tight pump with valves that hold, of so many L/min, at 24 strokes a second. */
  public static Pump of(double litresPerMinute, double ultimateFraction) {
    return new Pump(litresPerMinute * LITRES_A_MINUTE, ultimateFraction, 24, 0);
  }

  /** S0 in L/min. */
  public double litresPerMinute() {
    return speed / LITRES_A_MINUTE;
  }

  /** The same pump at another stroke frequency, Hz. */
  public Pump at(double hertz) {
    return new Pump(speed, ultimateFraction, hertz, restingLeak);
  }

  /** The same pump with a share of its speed lost, 0 to 1. */
  public Pump slowed(double lost) {
    return new Pump(speed * (1 - lost), ultimateFraction, strokeHertz, restingLeak);
  }

  /** The same pump with another ultimate pressure over ambient pressure. */
  public Pump downTo(double ultimate) {
    return new Pump(speed, ultimate, strokeHertz, restingLeak);
  }

  /** The same pump with valves that leak at rest through an effective area, m2. */
  public Pump leakingAtRest(double area) {
    return new Pump(speed, ultimateFraction, strokeHertz, area);
  }

  /** Volume swept by one stroke, m3. */
  double strokeVolume() {
    return speed / strokeHertz;
  }
}
