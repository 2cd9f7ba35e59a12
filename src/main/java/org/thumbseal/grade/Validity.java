package org.thumbseal.grade;

import static org.thumbseal.grade.Judged.number;

import java.util.ArrayList;
import java.util.List;
import org.thumbseal.grade.Criteria.AltitudeRule;
import org.thumbseal.measurement.AmbientPressure;
import org.thumbseal.measurement.Budgeted;
import org.thumbseal.measurement.Quality;
import org.thumbseal.quantity.Quantity;

/** What makes a test one that cannot be judged. */
final class Validity {
  private static final double LONGEST_GAP = 0.25;

  /** A jar of 0.3 L at a time constant of 0.5 s takes twice as long, s. */
  private static final double SHORTEST_RISE = 0.3;

  private final Judged test;
  private final Quality quality;
  private final List<Judgement> found = new ArrayList<>();

  private Validity(Judged test) {
    this.test = test;
    this.quality = test.quality();
  }

  static List<Judgement> of(Judged test) {
    Validity validity = new Validity(test);
    validity.slip();
    validity.start();
    validity.gap();
    validity.range();
    validity.faults();
    validity.zero();
    validity.moreThanTheAir();
    validity.impossible();
    return validity.found;
  }

  private void slip() {
    quality
        .slip()
        .ifPresent(
            fall ->
                invalid(
                    ReasonCode.OCCLUSION_SLIPPED,
                    number(
                        "The vacuum fell by %.1f kPa in the middle of the rise: the inlet was not"
                            + " blocked all the time. Repeat the test and hold tight.",
                        fall)));
  }

  private void start() {
    if (quality.start() == Quality.Start.FALLING) {
      invalid(
          ReasonCode.OCCLUSION_SLIPPED,
          "The inlet was blocked again before the vacuum had gone. Open it for some seconds, then"
              + " repeat the test.");
    } else if (quality.start() == Quality.Start.WITHIN) {
      invalid(
          ReasonCode.GAP_IN_TEST,
          number(
              "The record begins at a vacuum of %.1f kPa, with the inlet blocked already. Repeat"
                  + " the test from the open inlet.",
              test.measurement().openVacuum().value()));
    }
  }

  private void gap() {
    if (quality.faults().contains(Quality.RESTART)) {
      invalid(
          ReasonCode.GAP_IN_TEST,
          "The sensor restarted in mid-test, so nobody knows how much is missing. Check its plug"
              + " and supply, then repeat the test.");
    } else if (quality.longestGap() > LONGEST_GAP) {
      invalid(
          ReasonCode.GAP_IN_TEST,
          number(
              "No samples for %.2f s where it matters. Check the plug and cable of the sensor,"
                  + " then repeat the test.",
              quality.longestGap()));
    }
  }

  private void range() {
    if (quality.faults().contains("RANGE")) {
      invalid(
          ReasonCode.RANGE_CLIPPED,
          "The sensor reported a signal at an end of its range: a wire is off or loose, or it is"
              + " not made for 0 to -100 kPa. Look at its wires, then repeat the test.");
    } else if (quality.clipped()) {
      invalid(
          ReasonCode.RANGE_CLIPPED,
          "The sensor was at the end of its range. Use one that reaches from 0 to -100 kPa at"
              + " least.");
    }
  }

  private void faults() {
    test.measurement()
        .riseTime()
        .filter(t -> t.value() < SHORTEST_RISE)
        .ifPresent(
            t ->
                invalid(
                    ReasonCode.SENSOR_FAULT,
                    number(
                        "A rise in %.3f s: no pump empties a jar so fast. Check the sensor and its"
                            + " wires.",
                        t.value())));
    List<String> others = quality.faults().stream().filter(f -> !f.equals("RANGE")).toList();
    if (!others.isEmpty()) {
      invalid(
          ReasonCode.SENSOR_FAULT,
          "The sensor reported in mid-test: "
              + String.join(", ", others)
              + ". Check its supply and wiring, then repeat the test.");
    }
  }

  private void zero() {
    double open = test.measurement().openVacuum().value();
    if (!quality.zero().plausible() && open < -1) {
      invalid(
          ReasonCode.ZERO_DRIFT,
          number(
              "With the inlet open the sensor reads %.1f kPa above the air around it, so this is no"
                  + " test of a vacuum. Check the sensor; for a table (--columns) or plain numbers"
                  + " (--format), say whether the pressure is gauge, absolute or vacuum.",
              -open));
    } else if (!quality.zero().plausible()) {
      invalid(
          ReasonCode.ZERO_DRIFT,
          number(
              "At rest the sensor reads a vacuum of %.2f kPa, more than 2 %% of its range. Open it"
                  + " to the air, check it, and repeat the test.",
              quality.zero().kilopascals()));
    }
  }

  /** Then the air pressure that was said is wrong, and with it the limits, or the sensor is. */
  private void moreThanTheAir() {
    test.measurement()
        .ambient()
        .ifPresent(
            air ->
                test.measurement()
                    .maximumVacuum()
                    .map(Budgeted::quantity)
                    .filter(v -> exceeds(v, air.quantity()))
                    .ifPresent(v -> contradicted(v, air)));
  }

  private static boolean exceeds(Quantity vacuum, Quantity air) {
    double u = Math.hypot(vacuum.standardUncertainty(), air.standardUncertainty());
    return vacuum.value() - air.value() > Quantity.COVERAGE_FACTOR * u;
  }

  private void contradicted(Quantity vacuum, AmbientPressure air) {
    invalid(
        ReasonCode.SENSOR_FAULT,
        number(
            "The vacuum reached %s, and the air presses with %.1f kPa only (%s): one of the two is"
                + " wrong. Check the altitude or air pressure that was given, and the sensor.",
            Judged.text(vacuum), air.kilopascals(), air.origin().code()));
  }

  /** Under the strict rule a limit that the air does not allow is the place's fault. */
  private void impossible() {
    if (test.criteria().altitudeRule() == AltitudeRule.STRICT) {
      test.measurement()
          .ambient()
          .filter(a -> a.kilopascals() <= test.highestAsked())
          .ifPresent(this::impossibleAt);
    }
  }

  private void impossibleAt(AmbientPressure ambient) {
    invalid(
        ReasonCode.ALTITUDE_ADJUSTED,
        number(
            "The air presses with %.1f kPa here: no pump of any kind can reach %.1f kPa. The criteria"
                + " ask for it all the same, so this says nothing about the pump. Use criteria with"
                + " the altitude rule 'scale'.",
            ambient.kilopascals(), test.highestAsked()));
  }

  private void invalid(ReasonCode code, String text) {
    found.add(Judgement.of(Verdict.INVALID, code, text));
  }
}
