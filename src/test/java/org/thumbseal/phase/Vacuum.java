package org.thumbseal.phase;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import java.util.function.DoubleUnaryOperator;
import org.thumbseal.sample.StreamEvent;
import org.thumbseal.sample.StreamEvent.Sample;

/** A vacuum in kPa drawn stretch by stretch, and read by a sensor. */
final class Vacuum {
  private record Stretch(double from, double to, DoubleUnaryOperator level) {}

  private final List<Stretch> stretches = new ArrayList<>();
  private double end;
  private double level;

  double end() {
    return end;
  }

  /** Goes on for some seconds by a function of the time since then. */
  Vacuum then(double seconds, DoubleUnaryOperator course) {
    stretches.add(new Stretch(end, end + seconds, course));
    end += seconds;
    level = course.applyAsDouble(seconds);
    return this;
  }

  Vacuum steady(double seconds, double kilopascals) {
    return then(seconds, t -> kilopascals);
  }

  /** Approaches a level from where it is. */
  Vacuum towards(double seconds, double kilopascals, double tau) {
    double from = level;
    return then(seconds, t -> kilopascals + (from - kilopascals) * Math.exp(-t / tau));
  }

  double at(double seconds) {
    for (Stretch s : stretches) {
      if (seconds < s.to()) {
        return s.level().applyAsDouble(seconds - s.from());
      }
    }
    return level;
  }

  /** What a gauge sensor sends; noise in kPa rms, step in kPa. */
  List<StreamEvent> read(double hertz, double noise, double step) {
    Random random = new Random(7);
    List<StreamEvent> events = new ArrayList<>();
    for (int i = 0; i < end * hertz; i++) {
      double t = i / hertz;
      double v = at(t) + noise * random.nextGaussian();
      double seen = step > 0 ? step * Math.rint(v / step) : v;
      events.add(new Sample(t, t, -1_000 * seen));
    }
    return events;
  }
}
