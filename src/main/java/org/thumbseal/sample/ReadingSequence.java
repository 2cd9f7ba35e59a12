package org.thumbseal.sample;

import java.util.function.Consumer;
import org.jspecify.annotations.Nullable;
import org.thumbseal.sample.StreamEvent.Gap;
import org.thumbseal.sample.StreamEvent.Restart;
import org.thumbseal.sample.StreamEvent.Sample;
import org.thumbseal.wire.WireRecord.Reading;

/**
 * Follows counter and clock from reading to reading.
 *
 * <p>A reading that does not follow from the last good one waits for the next: if that one follows
 * from it, the sensor restarted (or the host missed a long stretch); if not, it was a corrupted
 * line that happened to pass the checksum, and is left out.
 */
final class ReadingSequence {
  private static final long UINT32 = 1L << 32;
  private static final long HALF = 1L << 31;
  private static final double MICROS = 1e6;
  private static final int MISFITS_TO_DOUBT = 4;

  /** A reading and when it came, in microseconds of the host's clock. */
  record Arrived(Reading reading, long hostMicros) {}

  private final Consumer<StreamEvent> events;
  private final Runnable implausible;
  private @Nullable Arrived last;
  private @Nullable Arrived odd;
  private long deviceMicros;
  private double periodMicros;
  private int misfits;

  ReadingSequence(Consumer<StreamEvent> events, Runnable implausible) {
    this.events = events;
    this.implausible = implausible;
  }

  /** Device time of the last sample, s. */
  double now() {
    return deviceMicros / MICROS;
  }

  /** Whether there was a sample. */
  boolean hasBegun() {
    return last != null;
  }

  /** The rate the sensor says it has, Hz. */
  void nominalRate(double hertz) {
    if (periodMicros == 0) {
      periodMicros = MICROS / hertz;
    }
  }

  void accept(Arrived next) {
    Arrived before = last;
    Arrived waiting = odd;
    if (before == null) {
      emit(next);
    } else if (follows(before, next)) {
      dropOdd();
      advance(before, next);
    } else if (waiting != null && follows(waiting, next)) {
      restart(before, waiting);
      advance(waiting, next);
    } else {
      dropOdd();
      odd = next;
      doubtPeriod();
    }
  }

  /** A sensor may be slower than it says: after some readings in a row that do not fit, learn. */
  private void doubtPeriod() {
    misfits++;
    if (misfits >= MISFITS_TO_DOUBT) {
      periodMicros = 0;
    }
  }

  void end() {
    dropOdd();
  }

  private void dropOdd() {
    if (odd != null) {
      implausible.run();
      odd = null;
    }
  }

  private void advance(Arrived before, Arrived next) {
    long counted = steps(before, next);
    long elapsed = elapsed(before, next);
    learnPeriod(counted, elapsed);
    if (counted > 1) {
      events.accept(new Gap(now(), elapsed / MICROS, counted - 1));
    }
    deviceMicros += elapsed;
    emit(next);
  }

  private void restart(Arrived before, Arrived first) {
    events.accept(new Restart(now()));
    deviceMicros += Math.max(1, first.hostMicros() - before.hostMicros());
    odd = null;
    emit(first);
  }

  private void emit(Arrived arrived) {
    last = arrived;
    misfits = 0;
    double host = arrived.hostMicros() / MICROS;
    events.accept(new Sample(now(), host, arrived.reading().pascals()));
  }

  private void learnPeriod(long counted, long elapsed) {
    if (periodMicros == 0) {
      periodMicros = elapsed / (double) counted;
    }
  }

  /** Whether counter and clock went on together, by a whole number of sample periods. */
  private boolean follows(Arrived before, Arrived next) {
    long counted = steps(before, next);
    long elapsed = elapsed(before, next);
    if (counted < 1 || counted >= HALF || elapsed < 1 || !inTime(before, next, elapsed)) {
      return false;
    }
    double expected = counted * periodMicros;
    return periodMicros == 0 || Math.abs(elapsed - expected) <= 0.3 * expected + periodMicros;
  }

  /** The host saw about as much time go by; arrival is batched, so leave a second and a tenth. */
  private static boolean inTime(Arrived before, Arrived next, long elapsed) {
    long host = next.hostMicros() - before.hostMicros();
    return elapsed - host <= MICROS + 0.1 * host;
  }

  private static long steps(Arrived before, Arrived next) {
    return Math.floorMod(next.reading().counter() - before.reading().counter(), UINT32);
  }

  /** Device time between two readings; the host tells how often the clock wrapped in a long gap. */
  private static long elapsed(Arrived before, Arrived next) {
    long ticks = Math.floorMod(next.reading().micros() - before.reading().micros(), UINT32);
    long host = next.hostMicros() - before.hostMicros();
    return ticks + UINT32 * Math.max(0, Math.round((host - ticks) / (double) UINT32));
  }
}
