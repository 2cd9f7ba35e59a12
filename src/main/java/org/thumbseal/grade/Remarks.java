package org.thumbseal.grade;

import static org.thumbseal.grade.Judged.number;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.EnumSet;
import java.util.List;
import java.util.Set;
import org.thumbseal.measurement.Budgeted;
import org.thumbseal.measurement.Quality;
import org.thumbseal.measurement.SensorCalibration;
import org.thumbseal.measurement.SensorCalibration.Standing;

/** What is worth a word and does not change the verdict. */
final class Remarks {
  private static final double LARGEST_DRIFT = 0.5;

  private static final Set<ReasonCode> CODES =
      EnumSet.of(
          ReasonCode.OPEN_VACUUM_HIGH,
          ReasonCode.RISE_FASTER_THAN_USUAL,
          ReasonCode.ALTITUDE_ADJUSTED,
          ReasonCode.ZERO_DRIFT,
          ReasonCode.CALIBRATION_OVERDUE,
          ReasonCode.CLOCK_UNSTEADY);

  private final Judged test;
  private final List<Judgement> remarks = new ArrayList<>();

  private Remarks(Judged test) {
    this.test = test;
  }

  static List<Judgement> of(Judged test) {
    Remarks remarks = new Remarks(test);
    remarks.open();
    remarks.fast();
    remarks.altitude();
    remarks.drift();
    remarks.calibration();
    remarks.clock();
    return remarks.remarks;
  }

  static boolean isRemark(Judgement judgement) {
    return CODES.contains(judgement.reason().code());
  }

  private void open() {
    double open = test.measurement().openVacuum().value();
    if (open > test.criteria().openKilopascals()) {
      add(
          ReasonCode.OPEN_VACUUM_HIGH,
          number(
              "With the inlet open the vacuum stood at %.1f kPa already: something narrows the"
                  + " inlet or the hose to the sensor.",
              open));
    }
  }

  private void fast() {
    double usual = test.criteria().usualRiseFrom();
    if (test.quality().slip().isEmpty()) {
      test.measurement()
          .riseTime()
          .map(Budgeted::value)
          .filter(t -> t < usual)
          .ifPresent(
              t ->
                  add(
                      ReasonCode.RISE_FASTER_THAN_USUAL,
                      number(
                          "A rise in %.1f s is faster than usual (from %.0f s). Was less than the"
                              + " whole jar evacuated: liquid in it, a float valve shut, the wrong"
                              + " port blocked?",
                          t, usual)));
    }
  }

  private void altitude() {
    if (test.limits().isAdjusted()) {
      add(
          ReasonCode.ALTITUDE_ADJUSTED,
          thinAir(test.measurement().ambient().orElseThrow().kilopascals())
              + number(
                  " So the limits were multiplied by %.3f: a rise of %.1f"
                      + " instead of %.1f kPa, a maximum of %.1f instead of %.1f kPa.",
                  test.limits().factor(),
                  test.limits().riseKilopascals(),
                  test.criteria().riseKilopascals(),
                  test.limits().maximumKilopascals(),
                  test.criteria().maximumKilopascals()));
    }
  }

  private String thinAir(double ambient) {
    return ambient <= test.highestAsked()
        ? number(
            "The air presses with %.1f kPa here: no pump of any kind can reach %.1f kPa.",
            ambient, test.highestAsked())
        : number(
            "The air presses with %.1f kPa here, not with the 101.3 kPa of the sea, and every pump"
                + " pulls less for it.",
            ambient);
  }

  private void drift() {
    test.quality()
        .zero()
        .drift()
        .filter(d -> Math.abs(d) > LARGEST_DRIFT)
        .ifPresent(
            d ->
                add(
                    ReasonCode.ZERO_DRIFT,
                    number(
                        "The zero of the sensor moved by %.2f kPa during the test. Let the sensor"
                            + " settle before the next one.",
                        d)));
  }

  private void calibration() {
    SensorCalibration calibration = test.measurement().calibration();
    if (calibration.standing() == Standing.OVERDUE) {
      add(
          ReasonCode.CALIBRATION_OVERDUE,
          "The calibration of the sensor was due on "
              + calibration.due().map(LocalDate::toString).orElseThrow()
              + "; until it is calibrated again (thumbseal calibrate) its readings count as less"
              + " certain.");
    }
  }

  private void clock() {
    Quality.Clock clock = test.quality().clock();
    if (!clock.steady()) {
      add(
          ReasonCode.CLOCK_UNSTEADY,
          "The clock of the sensor and that of this computer do not run together. The time of the"
              + " rise is less certain for it.");
    }
  }

  private void add(ReasonCode code, String text) {
    remarks.add(Judgement.of(Verdict.PASS, code, text));
  }
}
