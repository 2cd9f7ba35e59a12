package org.thumbseal.link;

import java.time.Duration;
import java.util.Optional;

/** A place that sensor bytes come from, open or not. */
public interface Link {

  /** The address as the user wrote it. */
  String name();

  /**
   * Opens it anew; nothing of an earlier connection is used again.
   *
   * @throws LinkUnavailable if that fails now; whether a later try can help is in its reason
   */
  LinkConnection open() throws LinkUnavailable;

  /**
   * Whether its end is an end. A finite source (a file, standard input, a simulator) can be made to
   * wait and is not opened twice. Any other (a port, a network) comes back after a loss, counts as
   * lost when it falls silent, and goes on sending when nobody listens.
   */
  boolean finite();

  /** How long after opening what comes in is to be thrown away. */
  default Duration settle() {
    return Duration.ZERO;
  }

  /** How long it may hold back what a sensor sent without losing it. */
  default Duration stall() {
    return Duration.ZERO;
  }

  /**
   * Whether it is a port of this computer: another program can read bytes away from it, and pulling
   * the plug helps a driver that hangs.
   */
  default boolean isPort() {
    return false;
  }

  /**
   * Another program of this computer that has the port open too, in words: {@code pid 123 (cat)};
   * empty where there is none, or none that this one may see. Takes some milliseconds.
   */
  default Optional<String> otherProgram() {
    return Optional.empty();
  }
}
