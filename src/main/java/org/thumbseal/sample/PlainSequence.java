package org.thumbseal.sample;

import java.util.function.Consumer;
import org.thumbseal.wire.PlainLines;
import org.thumbseal.wire.WireRecord.Plain;

/**
 * Readings without a checksum, in two steps: each gets its time, then what the gas cannot have done
 * is left out.
 */
final class PlainSequence {
  private final ReadingTimes times;
  private final Outliers outliers;

  PlainSequence(PlainLines format, Consumer<StreamEvent> events, Runnable implausible) {
    outliers = new Outliers(new SpacedSamples(events), implausible);
    times =
        format.isTimed()
            ? new DeviceTimes(format.wrapMicros().orElse(0), outliers, implausible)
            : new ArrivalTimes(outliers);
  }

  /** Whether there was a sample. */
  boolean hasBegun() {
    return outliers.hasBegun();
  }

  /** Time of the last sample, s. */
  double now() {
    return outliers.now();
  }

  void accept(long hostMicros, Plain reading) {
    times.accept(hostMicros, reading);
  }

  void end() {
    times.end();
    outliers.end();
  }
}
