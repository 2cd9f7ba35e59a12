package org.thumbseal.daemon;

import org.thumbseal.link.HostClock;

/**
 * What a supervisor needs of the world.
 *
 * @param clock time
 * @param watcher is told of changes
 * @param limits patience
 */
public record Surroundings(HostClock clock, LinkWatcher watcher, Limits limits) {}
