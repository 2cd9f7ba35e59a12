package org.thumbseal.link;

import java.util.Iterator;

/** What a simulator must be able to do to stand in for a port. */
@FunctionalInterface
public interface SimulatedSensor {

  /**
   * One line as a sensor sends it.
   *
   * @param hostMicros when it arrives, microseconds since the link was opened, never going back
   * @param text the line without its end, one character a byte
   */
  record TimedLine(long hostMicros, String text) {}

  /**
   * Everything one sensor sends, made as it is asked for.
   *
   * @param kind what is simulated
   * @param seed the same seed gives the same lines
   * @throws LinkUnavailable if the kind is not known; the message lists those that are
   */
  Iterator<TimedLine> lines(String kind, long seed) throws LinkUnavailable;
}
