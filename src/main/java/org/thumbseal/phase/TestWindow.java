package org.thumbseal.phase;

import java.util.List;
import java.util.Optional;
import org.thumbseal.sample.StreamEvent;
import org.thumbseal.sample.StreamEvent.Start;

/**
 * The stretch of a stream that holds one test, as the streaming detector cut it: what came before
 * (as far back as is of use), the test, and what came after.
 *
 * @param events everything in the stretch, in order
 * @param onsetSeconds device time at which the vacuum left the baseline, s; late by some samples
 * @param baseKilopascals vacuum before it, on the sensor's own zero, kPa
 * @param endSeconds device time at which the end was seen, s
 * @param ending how it ended
 * @param start the start that was said before it; absent where none was
 */
public record TestWindow(
    List<StreamEvent> events,
    double onsetSeconds,
    double baseKilopascals,
    double endSeconds,
    Ending ending,
    Optional<Start> start) {
  /** Keeps a copy of the events. */
  public TestWindow {
    events = List.copyOf(events);
  }
}
