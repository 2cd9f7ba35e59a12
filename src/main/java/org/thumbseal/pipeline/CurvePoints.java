package org.thumbseal.pipeline;

import java.util.ArrayList;
import java.util.List;
import org.thumbseal.capture.Capture;
import org.thumbseal.measurement.Measurement;
import org.thumbseal.sample.SampleStream;
import org.thumbseal.sample.StreamEvent;

/** The samples of a capture as a person wants to see them: vacuum against time since blocking. */
public final class CurvePoints {
  private CurvePoints() {}

  /**
   * One sample.
   *
   * @param seconds since the inlet was blocked, s
   * @param kilopascals vacuum, zero taken off, kPa
   */
  public record Point(double seconds, double kilopascals) {}

  /** The samples of a capture, for a test measured in it. */
  public static List<Point> of(Capture capture, Measurement test) {
    double rate = test.quality().clock().rate();
    double zero = test.quality().zero().kilopascals();
    List<Point> points = new ArrayList<>();
    SampleStream stream =
        new SampleStream(
            capture.header().lineFormat(),
            event -> {
              if (event instanceof StreamEvent.Sample sample) {
                points.add(
                    new Point(
                        sample.seconds() * rate - test.occludedAt().value(),
                        test.calibration().corrected(-sample.pascals() / 1_000) - zero));
              }
            });
    capture.lines().forEach(line -> stream.accept(line.hostMicros(), line.text()));
    stream.end();
    return points;
  }
}
