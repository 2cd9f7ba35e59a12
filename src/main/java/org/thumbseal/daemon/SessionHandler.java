package org.thumbseal.daemon;

import java.time.Instant;

/**
 * Takes what comes over one port. A session lasts from one opening of the port to its loss; there
 * may be many, one after another. All calls come from one thread, in the order in which things
 * happened, and each session opened is closed exactly once.
 *
 * <p>Host time is the monotonic clock in microseconds since the session was opened; it never goes
 * back. An exception thrown here ends the port for good, not the program.
 */
public interface SessionHandler {

  /**
   * A session begins.
   *
   * @param wallClock the moment at which host time is zero
   * @param source the address of the port as the user wrote it
   */
  void opened(Instant wallClock, String source);

  /**
   * A whole line came, good or not.
   *
   * @param hostMicros when its last byte was read
   * @param line without its end, one character a byte
   */
  void line(long hostMicros, String line);

  /**
   * Time went by without a whole line, though there may have been bytes: the moment to let
   * time-outs run. Comes about three times a second while a port is silent.
   */
  void quiet(long hostMicros);

  /**
   * Lines came faster than they were taken for so long that the queue was full. They are gone: what
   * was sent and what is missing is a gap, as if the line had been cut.
   *
   * @param hostMicros when that was over
   * @param lines how many
   */
  void lost(long hostMicros, long lines);

  /**
   * The session ends.
   *
   * @param hostMicros when
   * @param why in words: {@code end of input}, {@code stopped}, or what befell the port
   */
  void closed(long hostMicros, String why);
}
