package org.thumbseal.daemon;

import org.thumbseal.visit.StartedBy;

/**
 * A start that waits for the inlet to be blocked.
 *
 * @param by who said it
 * @param secondsLeft time left for that when this was told, s
 */
public record Started(StartedBy by, double secondsLeft) {}
