package org.thumbseal.pipeline;

import org.thumbseal.pipeline.CurvePoints.Point;
import org.thumbseal.sample.StreamEvent.Sample;

/**
 * How readings become the curve of one test, by what its document says.
 *
 * @param clockRate by which device times are multiplied
 * @param origin instant that the curve counts from, s from the first sample
 * @param zero vacuum of the corrected reading at rest, kPa
 * @param gain by which readings are multiplied about {@code pivot}
 * @param pivot vacuum at which the gain changes nothing, kPa: 0, or for an absolute sensor that of
 *     no pressure
 */
public record CurveFrame(double clockRate, double origin, double zero, double gain, double pivot) {
  private static final double PASCALS = 1_000;

  /** A reading on the curve. */
  Point point(Sample sample) {
    double vacuum = -sample.pascals() / PASCALS;
    return new Point(time(sample.seconds()), pivot + gain * (vacuum - pivot) - zero);
  }

  /** A device time on the curve, s. */
  double time(double seconds) {
    return seconds * clockRate - origin;
  }
}
