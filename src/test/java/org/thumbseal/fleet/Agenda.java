package org.thumbseal.fleet;

import java.time.Instant;
import java.util.Comparator;
import java.util.PriorityQueue;

/** What is done when; what is done may put more on it. */
final class Agenda {
  /** Something that is done. */
  @FunctionalInterface
  interface Task {
    void run() throws Exception;
  }

  private record Entry(Instant at, long number, Task task) {}

  private final PriorityQueue<Entry> entries =
      new PriorityQueue<>(Comparator.comparing(Entry::at).thenComparing(Entry::number));
  private long number;

  void put(Instant at, Task task) {
    entries.add(new Entry(at, number++, task));
  }

  /** Does all that is to be done before an instant. */
  void run(Instant end) throws Exception {
    for (Entry next = entries.poll(); next != null && next.at().isBefore(end); ) {
      next.task().run();
      next = entries.poll();
    }
  }
}
