package org.thumbseal.trend;

import java.util.Optional;

/**
 * When a pump reaches a limit, if it goes on as it has.
 *
 * @param earliest day on which one test in twenty would read beyond it, at the worst slope of the
 *     interval; never before today
 * @param likeliest day on which the line reaches it
 */
public record Crossing(double earliest, double likeliest) {
  /**
   * Stated only where the trend goes to the bad side and reaches the limit within the horizon, and
   * never for a pump that is already beyond.
   *
   * @param today days since 1970-01-01
   */
  public static Optional<Crossing> of(TrendLine line, Limit limit, double today, TrendRules rules) {
    double worsening = limit.worsening(line.slope().value());
    double now = limit.badness(line.at(today));
    if (worsening <= 0 || now >= 0 || -now / worsening > rules.horizonDays()) {
      return Optional.empty();
    }
    double fastest = limit.worsening(limit.worst(line.slope()));
    double ahead = Math.max(0, -limit.badness(limit.worst(line, today)) / fastest);
    return Optional.of(new Crossing(today + ahead, today - now / worsening));
  }
}
