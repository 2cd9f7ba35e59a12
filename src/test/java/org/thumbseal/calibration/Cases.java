package org.thumbseal.calibration;

import java.time.Instant;
import java.time.LocalDate;
import java.time.temporal.ChronoUnit;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;

/** Calibrations to test with, of a sensor {@code tp-01}. */
final class Cases {
  static final ReferenceGauge GAUGE = new ReferenceGauge("RG-7", "C-2211", 0.25, 2);
  static final String DAY = "2026-03-02";

  private Cases() {}

  static CalibrationFacts facts(String day) {
    return new CalibrationFacts(
        "tp-01",
        Instant.parse(day + "T07:00:00Z"),
        LocalDate.parse(day).plusYears(1),
        GAUGE,
        CalibrationFacts.USUAL_REPEATABILITY,
        Optional.of(24.0),
        Optional.empty());
  }

  /** Pairs written as on the command line: "81.2=82.6". */
  static List<CalibrationPoint> points(String... pairs) {
    return Stream.of(pairs).map(p -> p.split("=", -1)).map(Cases::point).toList();
  }

  private static CalibrationPoint point(String[] halves) {
    return new CalibrationPoint(Double.parseDouble(halves[0]), Double.parseDouble(halves[1]));
  }

  static Calibration of(String day, String... pairs) throws CalibrationRefused {
    return Calibration.of(id(day), facts(day), points(pairs));
  }

  static String id(String day) {
    return day + "-id";
  }

  static Instant after(String day, int days) {
    return Instant.parse(day + "T12:00:00Z").plus(days, ChronoUnit.DAYS);
  }
}
