package org.thumbseal.cli;

import java.time.Duration;
import org.thumbseal.link.HostClock;
import org.thumbseal.simulate.TimedLine;

/** Holds lines back until they are due, or lets them go at once. */
final class Pace {
  private final HostClock clock;
  private final boolean realTime;
  private final long startNanos;

  Pace(HostClock clock, boolean realTime) {
    this.clock = clock;
    this.realTime = realTime;
    this.startNanos = clock.nanos();
  }

  boolean holdsBack(TimedLine line) {
    return realTime && nanosUntil(line) > 0;
  }

  void await(TimedLine line) {
    clock.pause(Duration.ofNanos(nanosUntil(line)));
  }

  private long nanosUntil(TimedLine line) {
    return startNanos + line.hostMicros() * 1_000 - clock.nanos();
  }
}
