package org.thumbseal.calibration;

import java.util.Comparator;
import java.util.List;

/**
 * How far off a sensor was before anything was corrected: its largest deviation at the points.
 *
 * @param error sensor less reference, kPa
 * @param at reference vacuum at which it was, kPa
 */
public record AsFound(double error, double at) {
  static AsFound in(List<CalibrationPoint> points) {
    return points.stream()
        .map(p -> new AsFound(p.sensor() - p.reference(), p.reference()))
        .max(Comparator.comparingDouble(a -> Math.abs(a.error())))
        .orElseThrow();
  }
}
