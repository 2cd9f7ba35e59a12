package org.thumbseal.grade;

import java.util.Locale;
import org.thumbseal.measurement.Budgeted;
import org.thumbseal.measurement.Measurement;
import org.thumbseal.measurement.Quality;
import org.thumbseal.quantity.Quantity;

/**
 * A measurement beside the limits it is held against.
 *
 * @param measurement what was measured
 * @param criteria as set
 * @param limits as applied
 */
record Judged(Measurement measurement, Criteria criteria, Limits limits) {

  private static final double SHORTEST_FORECAST = 5;

  Quality quality() {
    return measurement.quality();
  }

  /** Whether the blocking lasted long enough to say what the vacuum would have gone on to. */
  boolean isLongEnough() {
    return quality().blockedSeconds() > SHORTEST_FORECAST;
  }

  /** The highest vacuum that the criteria ask for anywhere, kPa. */
  double highestAsked() {
    double open = measurement.openVacuum().value();
    return Math.max(criteria.maximumKilopascals(), open + criteria.riseKilopascals());
  }

  /** What would settle a value at a limit. */
  Remedy remedy(Budgeted value, double limit) {
    return new Remedy(value, Math.abs(value.value() - limit), measurement.calibration());
  }

  /** "8.65 s +- 0.50 s". */
  static String text(Quantity quantity) {
    return number(
        "%.2f %s +- %.2f %s",
        quantity.value(), quantity.unit(), quantity.expandedUncertainty(), quantity.unit());
  }

  static String number(String format, Object... values) {
    return String.format(Locale.ROOT, format, values);
  }
}
