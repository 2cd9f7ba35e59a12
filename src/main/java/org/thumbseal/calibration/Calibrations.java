package org.thumbseal.calibration;

import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneOffset;
import java.time.temporal.ChronoUnit;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import org.thumbseal.calibration.AppliedCalibration.Timing;
import org.thumbseal.measurement.SensorCalibration;
import org.thumbseal.wire.WireRecord.Reference;

/**
 * Calibrations of any number of sensors. Which one a test uses hangs on the test's start and on
 * nothing else; the day on which it is graded plays no part.
 *
 * @param all in any order
 */
public record Calibrations(List<Calibration> all) {
  /** None at all. */
  public static final Calibrations NONE = new Calibrations(List.of());

  private static final double DAYS_A_YEAR = 365.25;

  private static final Comparator<Calibration> BY_TIME =
      Comparator.<Calibration, Instant>comparing(c -> c.facts().calibratedAt())
          .thenComparing(Calibration::id);

  /** Keeps a copy. */
  public Calibrations {
    all = List.copyOf(all);
  }

  /**
   * The test that asks.
   *
   * @param sensor id of its sensor; empty where nobody knows it
   * @param start wall clock; empty where the record has no date
   * @param reads what the sensor's readings count from
   */
  public record Test(Optional<String> sensor, Optional<Instant> start, Reference reads) {}

  /**
   * The newest calibration of the sensor that was there when the test began. Where there is none,
   * the first one made within its own term after the test: the sensor was as that one found it, as
   * far as anybody can tell. Where the test has no date, the newest.
   */
  public SensorCalibration of(Test test) {
    List<Calibration> own =
        all.stream()
            .filter(c -> test.sensor().filter(c.facts().sensor()::equals).isPresent())
            .sorted(BY_TIME)
            .toList();
    return test.start()
        .map(start -> at(start, own, test.reads()))
        .orElseGet(() -> newest(own.stream()).map(c -> undated(c, test.reads())))
        .<SensorCalibration>map(c -> c)
        .orElseGet(SensorCalibration::none);
  }

  private static Optional<AppliedCalibration> at(
      Instant start, List<Calibration> own, Reference reads) {
    return newest(own.stream().filter(c -> !c.facts().calibratedAt().isAfter(start)))
        .map(c -> new AppliedCalibration(c, timing(c.facts(), start), reads))
        .or(() -> asFoundLater(start, own, reads));
  }

  private static Optional<Calibration> newest(Stream<Calibration> sorted) {
    return sorted.reduce((older, newer) -> newer);
  }

  private static AppliedCalibration undated(Calibration newest, Reference reads) {
    return new AppliedCalibration(
        newest,
        new Timing(0, Optional.of("the recording has no date: the newest calibration was taken")),
        reads);
  }

  private static Optional<AppliedCalibration> asFoundLater(
      Instant start, List<Calibration> own, Reference reads) {
    return own.stream()
        .findFirst()
        .filter(c -> days(day(start), c.facts().date()) <= days(c.facts().date(), c.facts().due()))
        .map(
            c ->
                new AppliedCalibration(
                    c,
                    new Timing(
                        0, Optional.of("calibrated after the test, as the sensor was found")),
                    reads));
  }

  private static Timing timing(CalibrationFacts facts, Instant start) {
    double overdue = days(facts.due(), day(start)) / DAYS_A_YEAR;
    return overdue > 0 ? new Timing(overdue, Optional.empty()) : Timing.WITHIN;
  }

  private static LocalDate day(Instant instant) {
    return LocalDate.ofInstant(instant, ZoneOffset.UTC);
  }

  private static double days(LocalDate from, LocalDate to) {
    return ChronoUnit.DAYS.between(from, to);
  }
}
