package org.thumbseal.link;

import org.thumbseal.wire.WireRecord.Identity;

/** What a port said when it was listened to. */
public sealed interface PortAnswer {

  /** A sensor said who it is. */
  record Sensor(Identity identity) implements PortAnswer {}

  /**
   * Something came, but no sensor said who it is.
   *
   * @param goodLines how many lines of the wire protocol came
   */
  record Stranger(long goodLines) implements PortAnswer {}

  /** Nothing came. */
  record Silence() implements PortAnswer {}

  /** It could not be opened. */
  record Closed(LinkUnavailable why) implements PortAnswer {}
}
