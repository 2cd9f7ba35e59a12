package org.thumbseal.measurement;

import java.util.Optional;
import java.util.stream.IntStream;
import org.thumbseal.measurement.PumpOff.Held;

/** The strokes of a running pump, as unrest of the readings beyond their noise. */
final class Unrest {
  /** Unrest are told from noise where they make the unrest so much larger. */
  private static final double VISIBLE = 1.5;

  private static final double CERTAIN = 3;
  private static final double GOING_ON = 0.6;
  private static final double SETTLED = 1;
  private static final double SHORTEST = 3;

  /** Neighbouring differences are dependent: half of a likelihood counts. */
  private static final double LIKELY = 8;

  private static final double LEAST_WIDTH = 0.1;

  /** Unrest get weaker with the pressure: only there is their strength about the same, kPa. */
  private static final double NEAR_HIGHEST = 0.5;

  private static final double CLEAR = 6;
  private static final double LARGEST_SHARE_LEFT = 0.85;

  /** Readings that are quieter than at rest are held by the end of the range. */
  private static final double LEAST_LEFT = 0.3;

  private final Held held;
  private final double rest;

  Unrest(Held held) {
    this.held = held;
    this.rest = held.noise() * held.noise();
  }

  /** Whether a pump that was heard before a moment is heard after it too. */
  boolean goOnAfter(double seconds) {
    Curve curve = held.curve();
    Curve last = curve.between(seconds - SHORTEST, seconds);
    double before = unrest(last);
    double after = unrest(curve.between(seconds + SETTLED, held.end()));
    double error = 2 * before * Math.sqrt(2.0 / Math.max(1, last.size()));
    boolean visible = before > VISIBLE * rest && before - rest > Math.max(steps(), CERTAIN * error);
    return visible && after > rest + GOING_ON * (before - rest);
  }

  /** When the strokes end, where they do and can be told from the noise. */
  Optional<PumpOff> end(double highest) {
    Curve part = heldPart(highest);
    int reach = part.indexAt(part.isEmpty() ? 0 : part.firstTime() + SHORTEST);
    double[] sums = sums(part);
    if (sums.length <= 2 * reach || reach == 0) {
      return Optional.empty();
    }
    double[] costs = IntStream.range(0, sums.length).mapToDouble(i -> cost(sums, i)).toArray();
    int best = lowest(costs, reach);
    return isEnd(sums, best)
        ? Optional.of(
            new PumpOff(part.time(best), width(part, costs, best), PumpOff.Sign.STROKES_END))
        : Optional.empty();
  }

  private static int lowest(double[] costs, int reach) {
    int best = reach;
    for (int i = reach; i < costs.length - reach; i++) {
      best = costs[i] < costs[best] ? i : best;
    }
    return best;
  }

  /** Twice the logarithm of how unlikely it is that the unrest changes at a sample. */
  private static double cost(double[] sums, int i) {
    int n = sums.length - 1;
    double before = Math.max(1e-12, sums[i] / Math.max(1, i));
    double after = Math.max(1e-12, (sums[n] - sums[i]) / Math.max(1, n - i));
    return i * StrictMath.log(before) + (n - i) * StrictMath.log(after);
  }

  /** Half the stretch in which the change may have been, by that likelihood, s. */
  private static double width(Curve part, double[] costs, int best) {
    int first = best;
    int last = best;
    for (int i = 0; i < costs.length; i++) {
      if (costs[i] < costs[best] + LIKELY) {
        first = Math.min(first, i);
        last = Math.max(last, i);
      }
    }
    return Math.max(LEAST_WIDTH, (part.time(last) - part.time(first)) / 2);
  }

  private Curve heldPart(double highest) {
    Curve curve = held.curve();
    double least = highest - NEAR_HIGHEST - 4 * held.noise();
    int end = curve.size();
    while (end > 0 && curve.level(end - 1) < least) {
      end--;
    }
    int first = end;
    while (first > 0 && curve.level(first - 1) >= least) {
      first--;
    }
    return curve.part(first, end);
  }

  /** Variance of white noise that would make the same second differences, kPa2. */
  static double unrest(Curve part) {
    double[] sums = sums(part);
    return sums.length < 2 ? 0 : sums[sums.length - 1] / (sums.length - 1);
  }

  /** Readings that go to and fro between two steps: second differences of two steps, squared. */
  private double steps() {
    return 4 * held.resolution() * held.resolution() / 6;
  }

  /** Running sums of squared second differences; a sixth of one is the variance of white noise. */
  private static double[] sums(Curve part) {
    double[] sums = new double[Math.max(0, part.size() - 1)];
    for (int i = 1; i < sums.length; i++) {
      double second = part.level(i - 1) - 2 * part.level(i) + part.level(i + 1);
      sums[i] = sums[i - 1] + second * second / 6;
    }
    return sums;
  }

  private boolean isEnd(double[] sums, int i) {
    int n = sums.length - 1;
    double before = sums[i] / i;
    double after = (sums[n] - sums[i]) / (n - i);
    // standard error of means of squares of neighbouring, hence dependent, differences
    double error = 2 * before * Math.sqrt(1.0 / i + 1.0 / (n - i));
    return after >= LEAST_LEFT * rest
        && after < LARGEST_SHARE_LEFT * before
        && before - after > Math.max(steps(), CLEAR * error);
  }
}
