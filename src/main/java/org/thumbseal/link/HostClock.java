package org.thumbseal.link;

import java.time.Duration;
import java.time.Instant;

/** The two clocks of the host, and waiting by them. */
public interface HostClock {

  /** Wall clock: the one anchor of a capture, and nothing else. */
  Instant wall();

  /** Monotonic clock in nanoseconds from an origin of its own. */
  long nanos();

  /**
   * Lets this time pass; none where it is negative: who works out how long to wait may have been
   * held up until after the moment that was waited for.
   */
  void pause(Duration time);

  /** The clocks of this machine. */
  static HostClock system() {
    return new SystemClock();
  }
}
