package org.thumbseal.measurement;

import java.util.Optional;
import org.thumbseal.wire.WireRecord.Reference;

/**
 * What has to be known beforehand to measure a test.
 *
 * @param reference what the sensor reads against
 * @param range the sensor's range, where it is known
 * @param ambient barometric pressure, where it is known
 * @param jarLitres volume of the jar, L, where it is known
 * @param pinched whether the hose between jar and pump was pinched for the decay
 * @param riseLimit how far the vacuum has to climb
 * @param calibration what is known of the sensor's scale
 * @param times whose clock the samples are timed by
 */
public record Setup(
    Reference reference,
    Optional<Range> range,
    Optional<AmbientPressure> ambient,
    Optional<Double> jarLitres,
    boolean pinched,
    RiseLimit riseLimit,
    SensorCalibration calibration,
    SampleTimes times) {

  /**
   * Ends of a sensor's range.
   *
   * @param lowPascals lower end, Pa
   * @param highPascals upper end, Pa
   */
  public record Range(double lowPascals, double highPascals) {
    double span() {
      return (highPascals - lowPascals) / 1_000;
    }

    boolean isEnd(double pascals) {
      return pascals <= lowPascals || pascals >= highPascals;
    }
  }

  /** The rise that is timed; it may depend on the ambient pressure. */
  @FunctionalInterface
  public interface RiseLimit {
    /** Rise above the open vacuum in kPa, more than zero. */
    double kilopascals(Optional<AmbientPressure> ambient);
  }
}
