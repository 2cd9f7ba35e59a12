package org.thumbseal.measurement;

import java.util.List;
import java.util.Optional;
import org.thumbseal.measurement.Contribution.Input;
import org.thumbseal.phase.Ending;

/**
 * What the record says about itself: can the test be judged on it?
 *
 * @param ending how the test ended
 * @param start what the blocking began from
 * @param blockedSeconds how long the inlet was blocked, s
 * @param finalSlope growth of the vacuum just before the end of the blocking, kPa/s
 * @param reachable the vacuum that could have been reached had the inlet stayed blocked, kPa
 * @param slip deepest fall during the rise, where it was more than 3 kPa, kPa
 * @param longestGap longest stretch without samples where it matters, s
 * @param clipped whether a reading stood at the end of the sensor's range
 * @param faults codes of the faults the sensor reported; {@code restart} if it began anew
 * @param zero what the zero is and how it was found
 * @param clock the sensor's clock against the host's
 * @param noise standard deviation of the readings, kPa
 */
public record Quality(
    Ending ending,
    Start start,
    double blockedSeconds,
    double finalSlope,
    double reachable,
    Optional<Double> slip,
    double longestGap,
    boolean clipped,
    List<String> faults,
    Zero zero,
    Clock clock,
    double noise) {

  /** Code for a sensor that began anew in mid-test. */
  public static final String RESTART = "restart";

  /** What a blocking began from. */
  public enum Start {
    /** A steady level with the inlet open. */
    STEADY,
    /** The first samples of the record: it begins with the blocking. */
    FIRST_SAMPLES,
    /** A vacuum that was still on its way down from a blocking before. */
    FALLING,
    /** A vacuum that was high already: the record begins within a blocking. */
    WITHIN
  }

  /** Keeps a copy of the faults. */
  public Quality {
    faults = List.copyOf(faults);
  }

  /**
   * The zero of the sensor.
   *
   * @param input vacuum the sensor reads at rest, kPa
   * @param source how it is known
   * @param drift change from before to after the test, where both are known, kPa
   * @param plausible whether it is within what a sensor in order has
   */
  public record Zero(Input input, String source, Optional<Double> drift, boolean plausible) {
    /** A zero with its standard uncertainty, kPa. */
    public Zero(
        double kilopascals,
        double standardUncertainty,
        String source,
        Optional<Double> drift,
        boolean plausible) {
      this(Input.normal(kilopascals, standardUncertainty, "kPa"), source, drift, plausible);
    }

    /** Vacuum the sensor reads at rest, kPa. */
    public double kilopascals() {
      return input.estimate();
    }

    /** Its standard uncertainty, kPa. */
    public double standardUncertainty() {
      return input.standardUncertainty();
    }
  }

  /**
   * The sensor's clock.
   *
   * @param rate true seconds per device second
   * @param standardUncertainty of the rate
   * @param steady whether it runs in proportion to the host's
   */
  public record Clock(double rate, double standardUncertainty, boolean steady) {}
}
