package org.thumbseal.index;

import java.time.Instant;

/**
 * When a pump last had a test of this verdict that counts.
 *
 * @param asset the pump
 * @param verdict of the test
 * @param at its start
 */
public record LastVerdict(String asset, String verdict, Instant at) {}
