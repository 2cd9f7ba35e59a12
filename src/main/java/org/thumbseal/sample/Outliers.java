package org.thumbseal.sample;

import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;
import org.thumbseal.sample.StreamEvent.Restart;
import org.thumbseal.sample.StreamEvent.Sample;

/**
 * Leaves out readings that only a damaged line can have made.
 *
 * <p>A pump cannot change the pressure faster than {@value #FASTEST} Pa/s (100 kPa at a time
 * constant of 0.5 s, the smallest jar), and its strokes shake a reading by less than {@value #JUMP}
 * Pa. Only a release is faster, and from a release the vacuum does not come back at once. So a
 * reading that is more than a stroke away from the last waits until the next one or two have come.
 * Where they are back where a pump can have brought them, a reading that sticks out on both sides
 * was no pressure; where they stay away, all of them are real.
 */
final class Outliers {
  static final double JUMP = 10_000;
  static final double FASTEST = 200_000;

  /** One damaged byte can be a line end, and make two wrong lines of one. */
  private static final int MOST_HELD = 2;

  private final SpacedSamples out;
  private final Runnable implausible;
  private final List<Sample> held = new ArrayList<>();
  private @Nullable Sample first;
  private @Nullable Sample last;

  Outliers(SpacedSamples out, Runnable implausible) {
    this.out = out;
    this.implausible = implausible;
  }

  boolean hasBegun() {
    return out.hasBegun();
  }

  double now() {
    return out.now();
  }

  void accept(Sample next) {
    Sample before = last;
    if (before == null) {
      begin(next);
    } else if (held.isEmpty() && distance(before, next) <= JUMP) {
      emit(next);
    } else if (!held.isEmpty() && isPossible(before, next)) {
      settle(before, next);
      accept(next);
    } else {
      hold(next);
    }
  }

  /** The sensor began anew: what is held belongs to nothing. */
  void restart() {
    end();
    first = null;
    last = null;
    out.restart(new Restart(out.now()));
  }

  void end() {
    held.forEach(sample -> implausible.run());
    held.clear();
  }

  /** Of the first two neither can be told to be the good one, unless they agree. */
  private void begin(Sample next) {
    Sample before = first;
    first = next;
    if (before != null && isPossible(before, next)) {
      emit(before);
      emit(next);
    } else if (before != null) {
      implausible.run();
    }
  }

  private void hold(Sample next) {
    held.add(next);
    if (held.size() > MOST_HELD) {
      held.forEach(this::emit);
      held.clear();
    }
  }

  private void settle(Sample before, Sample next) {
    double low = Math.min(before.pascals(), next.pascals()) - JUMP;
    double high = Math.max(before.pascals(), next.pascals()) + JUMP;
    for (Sample sample : held) {
      if (sample.pascals() < low || sample.pascals() > high) {
        implausible.run();
      } else {
        emit(sample);
      }
    }
    held.clear();
  }

  private void emit(Sample sample) {
    last = sample;
    out.accept(sample);
  }

  private static boolean isPossible(Sample before, Sample next) {
    return distance(before, next) <= JUMP + FASTEST * (next.seconds() - before.seconds());
  }

  private static double distance(Sample one, Sample other) {
    return Math.abs(one.pascals() - other.pascals());
  }
}
