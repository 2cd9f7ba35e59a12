package org.thumbseal.calibration;

import java.util.ArrayDeque;
import java.util.Deque;
import java.util.Optional;

/** The mean of a sensor's last two seconds, once they stand still. Not for several threads. */
public final class SteadyReading {
  /** Length of the mean, s, on the sensor's own clock. */
  public static final double SPAN = 2;

  /** The halves of a settled stretch differ by less, kPa. */
  private static final double STILL = 0.1;

  private static final double WITHOUT_GAP = 0.5;
  private static final int FEWEST = 10;

  private final Deque<Reading> last = new ArrayDeque<>();

  private record Reading(double seconds, double kilopascals) {}

  /** Takes the next reading: device time in s, and vacuum in kPa. */
  public void accept(double seconds, double kilopascals) {
    if (!last.isEmpty() && !follows(seconds)) {
      forget();
    }
    last.addLast(new Reading(seconds, kilopascals));
    while (seconds - last.getFirst().seconds() > SPAN) {
      last.removeFirst();
    }
  }

  /** Begins anew: what comes next does not follow on from what came before. */
  public void forget() {
    last.clear();
  }

  private boolean follows(double seconds) {
    double step = seconds - last.getLast().seconds();
    return step > 0 && step < WITHOUT_GAP;
  }

  /** The mean, kPa; empty while the readings move, or there are not two seconds of them. */
  public Optional<Double> settled() {
    if (last.size() < FEWEST || length() < 0.9 * SPAN) {
      return Optional.empty();
    }
    double middle = last.getFirst().seconds() + length() / 2;
    double before = mean(Double.NEGATIVE_INFINITY, middle);
    double after = mean(middle, Double.POSITIVE_INFINITY);
    return Math.abs(after - before) < STILL
        ? Optional.of(mean(Double.NEGATIVE_INFINITY, Double.POSITIVE_INFINITY))
        : Optional.empty();
  }

  private double length() {
    return last.getLast().seconds() - last.getFirst().seconds();
  }

  private double mean(double from, double to) {
    return last.stream()
        .filter(r -> r.seconds() >= from && r.seconds() < to)
        .mapToDouble(Reading::kilopascals)
        .average()
        .orElse(Double.NaN);
  }
}
