package org.thumbseal.measurement;

import java.util.List;
import java.util.stream.DoubleStream;
import org.thumbseal.phase.TestWindow;
import org.thumbseal.sample.StreamEvent;
import org.thumbseal.sample.StreamEvent.Gap;
import org.thumbseal.sample.StreamEvent.Sample;

/**
 * A window of the stream as curves.
 *
 * @param window as it was cut
 * @param samples all of them
 * @param curve corrected vacuum on the sensor's own zero against device time, spikes left out
 * @param noise standard deviation of the readings, kPa
 * @param resolution step of the readings, kPa
 * @param calibration by which the readings were corrected
 */
record Recorded(
    TestWindow window,
    List<Sample> samples,
    Curve curve,
    double noise,
    double resolution,
    SensorCalibration calibration) {
  private static final double PASCALS = 1_000;
  private static final double BEFORE_ONSET = 0.3;
  private static final int ENOUGH = 15;

  static Recorded of(TestWindow window, SensorCalibration calibration) {
    List<Sample> samples = select(window.events(), Sample.class);
    Curve curve = Spikes.removed(corrected(samples, calibration));
    return new Recorded(
        window, samples, curve, noise(window, curve), resolution(samples), calibration);
  }

  private static Curve corrected(List<Sample> samples, SensorCalibration calibration) {
    return Curve.of(
        samples.stream().mapToDouble(Sample::seconds).toArray(),
        samples.stream().mapToDouble(s -> calibration.corrected(-s.pascals() / PASCALS)).toArray());
  }

  /** A noisy sample at the edge of a step may have been left out as a spike; here it is still. */
  Curve withEdges() {
    return corrected(samples, calibration).medianOfFive();
  }

  /** From before the rise, where there is enough of it: strokes in the rise are no noise. */
  private static double noise(TestWindow window, Curve curve) {
    Curve quiet = quiet(window, curve);
    return Spikes.noise(quiet.size() >= ENOUGH ? quiet : curve);
  }

  /** What comes before the blocking; empty where the record begins with it. */
  Curve quiet() {
    return quiet(window, curve);
  }

  private static Curve quiet(TestWindow window, Curve curve) {
    return curve.between(curve.firstTime(), window.onsetSeconds() - BEFORE_ONSET);
  }

  List<Gap> gaps() {
    return select(window.events(), Gap.class);
  }

  <E extends StreamEvent> List<E> all(Class<E> kind) {
    return select(window.events(), kind);
  }

  private static <E extends StreamEvent> List<E> select(List<StreamEvent> from, Class<E> kind) {
    return from.stream().filter(kind::isInstance).map(kind::cast).toList();
  }

  /** The smallest difference between two readings that are not the same. */
  private static double resolution(List<Sample> samples) {
    double[] distinct = samples.stream().mapToDouble(Sample::pascals).sorted().distinct().toArray();
    DoubleStream steps =
        java.util.stream.IntStream.range(1, distinct.length)
            .mapToDouble(i -> distinct[i] - distinct[i - 1]);
    return steps.min().orElse(0) / PASCALS;
  }
}
