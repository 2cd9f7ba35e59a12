package org.thumbseal.phase;

import java.util.List;
import org.thumbseal.sample.StreamEvent;

/**
 * The stretch of a stream that holds one test, as the streaming detector cut it: what came before
 * (as far back as is of use), the test, and what came after.
 *
 * @param events everything in the stretch, in order
 * @param onsetSeconds device time at which the vacuum left the baseline, s; late by some samples
 * @param baseKilopascals vacuum before it, on the sensor's own zero, kPa
 * @param endSeconds device time at which the end was seen, s
 * @param ending how it ended
 */
public record TestWindow(
    List<StreamEvent> events,
    double onsetSeconds,
    double baseKilopascals,
    double endSeconds,
    Ending ending) {
  /** Keeps a copy of the events. */
  public TestWindow {
    events = List.copyOf(events);
  }
}
