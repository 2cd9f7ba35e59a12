package org.thumbseal.phase;

import java.util.ArrayDeque;
import java.util.Deque;
import java.util.List;
import org.thumbseal.sample.StreamEvent;

/** The events that a test may still need: some minutes before it, all of it, a little after it. */
final class History {
  /** Longest stretch kept before a test, s. */
  static final double KEPT_BEFORE = 120;

  private final Deque<StreamEvent> events = new ArrayDeque<>();

  void add(StreamEvent event) {
    events.addLast(event);
  }

  void forgetBefore(double seconds) {
    while (!events.isEmpty() && events.getFirst().seconds() < seconds) {
      events.removeFirst();
    }
  }

  List<StreamEvent> between(double from, double to) {
    return events.stream().filter(e -> e.seconds() >= from && e.seconds() <= to).toList();
  }

  void clear() {
    events.clear();
  }
}
