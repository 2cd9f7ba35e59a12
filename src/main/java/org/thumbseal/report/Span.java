package org.thumbseal.report;

/**
 * A stretch of time.
 *
 * @param from s since the origin of the curve
 * @param to likewise, later
 */
public record Span(double from, double to) {
  boolean contains(double seconds) {
    return seconds >= from && seconds <= to;
  }
}
