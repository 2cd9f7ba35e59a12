package org.thumbseal.link;

import java.time.Duration;
import java.util.OptionalLong;

/** An open link. One thread reads; another may close. */
public interface LinkConnection extends AutoCloseable {

  /** What {@link #read} returns when the link is lost or at its end. */
  int LOST = -1;

  /**
   * Waits for bytes, a third of a second at most.
   *
   * @param buffer takes them from its start; must not be empty
   * @return how many came; 0 when none did in that time; {@link #LOST} for ever after a loss or the
   *     end
   */
  int read(byte[] buffer);

  /**
   * When what was read last arrived, microseconds since the opening, where the link knows it better
   * than the clock of whoever reads: a simulator has a time of its own, which may run faster.
   */
  default OptionalLong arrivedMicros() {
    return OptionalLong.empty();
  }

  /**
   * How long the time of {@link #arrivedMicros} has been running, by the monotonic clock; nothing
   * where the reader's own clock times what comes. A line that was opened before anybody read it is
   * that much older than its first reading.
   */
  default Duration age() {
    return Duration.ZERO;
  }

  /** Lets go of it, within two seconds whatever the driver does. Closing twice is harmless. */
  @Override
  void close();
}
