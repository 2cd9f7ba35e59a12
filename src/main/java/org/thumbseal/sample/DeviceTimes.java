package org.thumbseal.sample;

import org.jspecify.annotations.Nullable;
import org.thumbseal.sample.StreamEvent.Sample;
import org.thumbseal.wire.WireRecord.Plain;

/**
 * Times by the sensor's own clock. There is neither counter nor checksum, so a time that does not
 * follow from the last one within two and a half usual steps waits for the next reading, as in
 * {@link ReadingSequence}: where that follows from the last, the odd one was damaged; where it
 * follows from the odd one, lines are missing or the sensor began anew.
 */
final class DeviceTimes implements ReadingTimes {
  private static final double MICROS = 1e6;
  private static final double LONGEST_IN_STEPS = 2.5;
  private static final double LONGEST_UNKNOWN = 1e6;
  private static final int MISFITS_TO_DOUBT = 4;

  private record Arrived(long hostMicros, long micros, double pascals) {}

  private final long wrapMicros;
  private final Outliers outliers;
  private final Runnable implausible;
  private final RecentSteps steps = new RecentSteps();
  private @Nullable Arrived last;
  private @Nullable Arrived odd;
  private long deviceMicros;
  private int misfits;

  /**
   * Follows a clock.
   *
   * @param wrapMicros after which it begins anew at 0; 0 for a clock that does not
   */
  DeviceTimes(long wrapMicros, Outliers outliers, Runnable implausible) {
    this.wrapMicros = wrapMicros;
    this.outliers = outliers;
    this.implausible = implausible;
  }

  @Override
  public void accept(long hostMicros, Plain reading) {
    Arrived next = new Arrived(hostMicros, reading.micros().orElseThrow(), reading.pascals());
    Arrived before = last;
    Arrived waiting = odd;
    if (before == null) {
      emit(next);
    } else if (follows(before, next, waiting == null ? 0 : 1)) {
      dropOdd();
      advance(before, next);
    } else if (waiting != null && follows(waiting, next, 0)) {
      resume(before, waiting);
      advance(waiting, next);
    } else {
      dropOdd();
      odd = next;
      doubtStep();
    }
  }

  @Override
  public void end() {
    dropOdd();
  }

  private boolean follows(Arrived before, Arrived next, int between) {
    long elapsed = elapsed(before, next);
    double longest =
        steps.isEmpty() ? LONGEST_UNKNOWN : (LONGEST_IN_STEPS + between) * steps.usual();
    return elapsed > 0 && elapsed <= longest;
  }

  private long elapsed(Arrived before, Arrived next) {
    long elapsed = next.micros() - before.micros();
    return elapsed < 0 && wrapMicros > 0 ? elapsed + wrapMicros : elapsed;
  }

  private void advance(Arrived before, Arrived next) {
    long elapsed = elapsed(before, next);
    steps.add((double) elapsed);
    deviceMicros += elapsed;
    emit(next);
  }

  /** Lines are missing if the host saw as much time go by; else the sensor began anew. */
  private void resume(Arrived before, Arrived first) {
    long host = first.hostMicros() - before.hostMicros();
    long elapsed = elapsed(before, first);
    odd = null;
    boolean untold = host == 0; // a file, or one batch: arrival tells nothing
    if (elapsed > 0 && (untold || elapsed - host <= MICROS + 0.1 * host)) {
      deviceMicros += elapsed;
    } else {
      outliers.restart();
      deviceMicros += Math.max(1, host);
    }
    emit(first);
  }

  private void emit(Arrived arrived) {
    last = arrived;
    misfits = 0;
    outliers.accept(
        new Sample(deviceMicros / MICROS, arrived.hostMicros() / MICROS, arrived.pascals()));
  }

  private void dropOdd() {
    if (odd != null) {
      implausible.run();
      odd = null;
    }
  }

  private void doubtStep() {
    misfits++;
    if (misfits >= MISFITS_TO_DOUBT) {
      steps.forget();
    }
  }
}
