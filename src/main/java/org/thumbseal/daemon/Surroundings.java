package org.thumbseal.daemon;

import org.thumbseal.link.HostClock;
import org.thumbseal.wire.LineFormat;

/**
 * What a supervisor needs of the world.
 *
 * @param clock time
 * @param watcher is told of changes
 * @param limits patience
 * @param format how the lines are written that sensors send
 */
public record Surroundings(HostClock clock, LinkWatcher watcher, Limits limits, LineFormat format) {
  /** For sensors that speak the wire protocol. */
  public Surroundings(HostClock clock, LinkWatcher watcher, Limits limits) {
    this(clock, watcher, limits, LineFormat.PROTOCOL_1);
  }
}
