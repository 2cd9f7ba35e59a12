package org.thumbseal.simulate;

/**
 * One line as it arrives.
 *
 * @param hostMicros host's monotonic clock, microseconds since it began to listen
 * @param line the line without its end, one character a byte (U+0000 to U+00FF)
 */
public record TimedLine(long hostMicros, String line) {}
