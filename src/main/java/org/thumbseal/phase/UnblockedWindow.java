package org.thumbseal.phase;

import java.util.List;
import org.thumbseal.sample.StreamEvent;
import org.thumbseal.sample.StreamEvent.Start;

/**
 * The stretch of a stream after a start that no blocking followed in time, and what came before it
 * as far back as is of use.
 *
 * @param events everything in the stretch, in order
 * @param start what was said
 * @param endSeconds device time at which it had waited too long, s
 */
public record UnblockedWindow(List<StreamEvent> events, Start start, double endSeconds) {
  /** Keeps a copy of the events. */
  public UnblockedWindow {
    events = List.copyOf(events);
  }
}
