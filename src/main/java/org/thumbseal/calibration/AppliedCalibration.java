package org.thumbseal.calibration;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import org.thumbseal.measurement.Contribution;
import org.thumbseal.measurement.SensorCalibration;
import org.thumbseal.wire.WireRecord.Reference;

/**
 * A calibration as it is used for one test.
 *
 * <p>Drift since the calibration and the temperature of another day: +-0.5 % of reading,
 * rectangular, within the term; when it is over, twice that and 0.5 % more for each further year,
 * up to the 2.5 % of a sensor without calibration. Common practice for low-cost sensors in a heated
 * room, no published source.
 *
 * @param calibration which
 * @param when how it stands in time to the test
 * @param reads what the sensor's readings count from
 */
public record AppliedCalibration(Calibration calibration, Timing when, Reference reads)
    implements SensorCalibration {
  private static final double DRIFT = 0.005;
  private static final double LARGEST_DRIFT = 0.025;

  /** An absolute sensor reads about so much at rest; the gain turns its scale about that. */
  private static final double AT_REST = -101.325;

  /**
   * How a calibration stands in time to a test.
   *
   * @param overdueYears since the end of its term; 0 within it
   * @param remark what is to be said about it, if anything
   */
  public record Timing(double overdueYears, Optional<String> remark) {
    /** Within the term, nothing to say. */
    static final Timing WITHIN = new Timing(0, Optional.empty());
  }

  @Override
  public double corrected(double kilopascals) {
    double pivot = reads == Reference.ABSOLUTE ? AT_REST : 0;
    return pivot + calibration.line().gain() * (kilopascals - pivot);
  }

  @Override
  public List<Contribution> errors(double kilopascals) {
    List<Contribution> errors =
        new ArrayList<>(calibration.line().errors(kilopascals, calibration.facts().reference()));
    errors.add(
        new Contribution(
            "calibration-drift",
            Math.abs(kilopascals) * drift() / Math.sqrt(3),
            String.format(
                Locale.ROOT,
                "since the calibration, +-%.2f %% of reading, rectangular%s",
                100 * drift(),
                isOverdue() ? ", overdue" : "")));
    return errors;
  }

  /** Half width of the drift as a share of the reading. */
  private double drift() {
    return isOverdue() ? Math.min(LARGEST_DRIFT, DRIFT * (2 + when.overdueYears())) : DRIFT;
  }

  private boolean isOverdue() {
    return when.overdueYears() > 0;
  }

  @Override
  public Standing standing() {
    return isOverdue() ? Standing.OVERDUE : Standing.VALID;
  }

  @Override
  public Optional<LocalDate> due() {
    return Optional.of(calibration.facts().due());
  }

  /**
   * What a reader has to know about its use in one test; empty as a rule.
   *
   * @param highest the highest vacuum of the test, kPa
   */
  public Optional<String> note(double highest) {
    List<String> notes = new ArrayList<>();
    when.remark().ifPresent(notes::add);
    if (calibration.line().isBeyond(highest)) {
      notes.add(
          String.format(
              Locale.ROOT,
              "used at %.1f kPa, calibrated up to %.1f kPa only: the uncertainty grows beyond",
              highest,
              calibration.line().highest()));
    }
    return notes.isEmpty() ? Optional.empty() : Optional.of(String.join("; ", notes));
  }
}
