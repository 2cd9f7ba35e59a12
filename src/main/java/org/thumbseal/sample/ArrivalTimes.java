package org.thumbseal.sample;

import java.util.ArrayList;
import java.util.List;
import org.thumbseal.sample.StreamEvent.Sample;
import org.thumbseal.wire.WireRecord.Plain;

/**
 * Times by arrival. Readings that arrived together were made one after another since those before
 * arrived, so they are spread over that time; but never wider than twice the usual step, or a
 * silence would be filled.
 */
final class ArrivalTimes implements ReadingTimes {
  private static final double MICROS = 1e6;
  private static final double WIDEST = 2;

  private final Outliers outliers;
  private final List<Double> batch = new ArrayList<>();
  private final RecentSteps steps = new RecentSteps();
  private boolean begun;
  private long originMicros;
  private long beforeMicros;
  private long batchMicros;

  ArrivalTimes(Outliers outliers) {
    this.outliers = outliers;
  }

  @Override
  public void accept(long hostMicros, Plain reading) {
    if (!batch.isEmpty() && hostMicros > batchMicros) {
      flush();
    }
    batchMicros = hostMicros;
    batch.add(reading.pascals());
  }

  @Override
  public void end() {
    if (!batch.isEmpty()) {
      flush();
    }
  }

  private void flush() {
    if (begun) {
      spread();
    } else {
      // What lay waiting when the port was opened is of unknown age: the last one is the newest.
      begun = true;
      originMicros = batchMicros;
      emit((double) batchMicros, batch.get(batch.size() - 1));
    }
    beforeMicros = batchMicros;
    batch.clear();
  }

  private void spread() {
    double even = (batchMicros - beforeMicros) / (double) batch.size();
    double step = steps.isEmpty() ? even : Math.min(even, WIDEST * steps.usual());
    steps.add(even);
    for (int i = 0; i < batch.size(); i++) {
      emit(batchMicros - (batch.size() - 1 - i) * step, batch.get(i));
    }
  }

  private void emit(double micros, double pascals) {
    outliers.accept(new Sample((micros - originMicros) / MICROS, batchMicros / MICROS, pascals));
  }
}
