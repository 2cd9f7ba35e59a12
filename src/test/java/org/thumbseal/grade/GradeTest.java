package org.thumbseal.grade;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Arrays;
import java.util.EnumSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.function.Consumer;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.thumbseal.measurement.AmbientPressure;
import org.thumbseal.measurement.AmbientPressure.Origin;
import org.thumbseal.measurement.Quality;
import org.thumbseal.measurement.Quality.Clock;
import org.thumbseal.measurement.Quality.Start;
import org.thumbseal.measurement.Quality.Zero;
import org.thumbseal.phase.Ending;

/** Each reason, by a sheet that is that of a sound pump but for one thing. */
class GradeTest {
  /**
   * One thing that is not as it should be, and what the grade must say.
   *
   * @param name of the case
   * @param change of a sound pump's sheet
   * @param verdict expected
   * @param reasons expected, in order
   */
  record Case(String name, Consumer<Sheet> change, Verdict verdict, List<ReasonCode> reasons) {
    static Case of(String name, Consumer<Sheet> change, Verdict verdict, ReasonCode... reasons) {
      return new Case(name, change, verdict, List.of(reasons));
    }

    Grade grade() {
      Sheet sheet = Sheet.sound();
      change.accept(sheet);
      return Grade.of(sheet.measurement(), Criteria.DEFAULT);
    }

    @Override
    public String toString() {
      return name;
    }
  }

  static Stream<Case> cases() {
    return Stream.of(met(), missed(), undecided(), released(), unjudged(), remarked())
        .flatMap(List::stream);
  }

  private static List<Case> met() {
    return List.of(
        Case.of(
            "sound", s -> {}, Verdict.PASS, ReasonCode.RISE_IN_TIME, ReasonCode.MAXIMUM_REACHED));
  }

  private static List<Case> missed() {
    return List.of(
        Case.of(
            "slow",
            s -> s.rise = 13,
            Verdict.FAIL,
            ReasonCode.RISE_SLOW,
            ReasonCode.MAXIMUM_REACHED),
        Case.of(
            "low",
            s -> lowMaximum(s, 72),
            Verdict.FAIL,
            ReasonCode.MAXIMUM_LOW,
            ReasonCode.RISE_IN_TIME),
        Case.of(
            "far too low",
            s -> {
              s.risen = false;
              lowMaximum(s, 30);
            },
            Verdict.FAIL,
            ReasonCode.RISE_NOT_REACHED,
            ReasonCode.MAXIMUM_LOW),
        Case.of(
            "slow and still climbing",
            s -> {
              s.rise = 20;
              lowMaximum(s, 72);
              s.reachable = 85;
              s.finalSlope = 0.5;
            },
            Verdict.FAIL,
            ReasonCode.RISE_SLOW,
            ReasonCode.MAXIMUM_LOW));
  }

  private static void lowMaximum(Sheet sheet, double kilopascals) {
    sheet.maximum = kilopascals;
    sheet.reachable = kilopascals;
  }

  private static List<Case> undecided() {
    return List.of(
        Case.of(
            "rise near its limit",
            s -> s.rise = 9.8,
            Verdict.INCONCLUSIVE,
            ReasonCode.NEAR_LIMIT,
            ReasonCode.MAXIMUM_REACHED),
        Case.of(
            "maximum near its limit",
            s -> lowMaximum(s, 81),
            Verdict.INCONCLUSIVE,
            ReasonCode.NEAR_LIMIT,
            ReasonCode.RISE_IN_TIME),
        Case.of(
            "maximum near its limit and still climbing",
            s -> {
              lowMaximum(s, 81);
              s.finalSlope = 0.5;
            },
            Verdict.INCONCLUSIVE,
            ReasonCode.NEAR_LIMIT,
            ReasonCode.RISE_IN_TIME),
        Case.of(
            "a rise that was all but reached",
            s -> {
              s.risen = false;
              lowMaximum(s, 64.5);
            },
            Verdict.FAIL,
            ReasonCode.MAXIMUM_LOW,
            ReasonCode.NEAR_LIMIT));
  }

  private static List<Case> released() {
    return List.of(
        Case.of(
            "let go in mid-rise",
            s -> {
              s.risen = false;
              s.blocked = 4;
              lowMaximum(s, 40);
              s.reachable = 90;
            },
            Verdict.INVALID,
            ReasonCode.RELEASED_EARLY),
        Case.of(
            "let go before the maximum",
            s -> {
              lowMaximum(s, 72);
              s.reachable = 90;
              s.finalSlope = 3;
            },
            Verdict.INVALID,
            ReasonCode.RELEASED_EARLY),
        Case.of(
            "pump off in mid-rise",
            s -> {
              s.risen = false;
              s.blocked = 4;
              lowMaximum(s, 40);
              s.reachable = 90;
              s.ending = Ending.DECAYED;
            },
            Verdict.INVALID,
            ReasonCode.RELEASED_EARLY),
        Case.of(
            "cut off in mid-rise",
            s -> {
              s.risen = false;
              s.blocked = 4;
              lowMaximum(s, 40);
              s.reachable = 90;
              s.ending = Ending.CUT_OFF;
            },
            Verdict.INVALID,
            ReasonCode.GAP_IN_TEST),
        Case.of(
            "blocked for less than a second",
            s -> {
              s.measured = false;
              s.blocked = 0.5;
            },
            Verdict.INVALID,
            ReasonCode.RELEASED_EARLY));
  }

  private static List<Case> unjudged() {
    return List.of(
        Case.of(
            "slipped",
            s -> s.slip = Optional.of(12.0),
            Verdict.INVALID,
            ReasonCode.OCCLUSION_SLIPPED),
        Case.of(
            "blocked again too soon",
            s -> s.start = Start.FALLING,
            Verdict.INVALID,
            ReasonCode.OCCLUSION_SLIPPED),
        Case.of(
            "begins within a blocking",
            s -> s.start = Start.WITHIN,
            Verdict.INVALID,
            ReasonCode.GAP_IN_TEST),
        Case.of("samples missing", s -> s.gap = 0.26, Verdict.INVALID, ReasonCode.GAP_IN_TEST),
        Case.of(
            "sensor restarted",
            s -> s.faults = List.of(Quality.RESTART),
            Verdict.INVALID,
            ReasonCode.GAP_IN_TEST,
            ReasonCode.SENSOR_FAULT),
        Case.of("end of range", s -> s.clipped = true, Verdict.INVALID, ReasonCode.RANGE_CLIPPED),
        Case.of(
            "the sensor says so itself",
            s -> s.faults = List.of("RANGE"),
            Verdict.INVALID,
            ReasonCode.RANGE_CLIPPED),
        Case.of(
            "sensor fault",
            s -> s.faults = List.of("ADC"),
            Verdict.INVALID,
            ReasonCode.SENSOR_FAULT),
        Case.of(
            "zero far off",
            s -> s.zero = new Zero(4, 0.01, "quiet start", Optional.empty(), false),
            Verdict.INVALID,
            ReasonCode.ZERO_DRIFT));
  }

  private static List<Case> remarked() {
    return List.of(
        Case.of(
            "fast",
            s -> s.rise = 4,
            Verdict.PASS,
            ReasonCode.RISE_IN_TIME,
            ReasonCode.MAXIMUM_REACHED,
            ReasonCode.RISE_FASTER_THAN_USUAL),
        Case.of(
            "narrow inlet",
            s -> s.open = 12,
            Verdict.PASS,
            ReasonCode.RISE_IN_TIME,
            ReasonCode.MAXIMUM_REACHED,
            ReasonCode.OPEN_VACUUM_HIGH),
        Case.of(
            "zero moved",
            s -> s.zero = new Zero(0, 0.01, "quiet start", Optional.of(-0.6), true),
            Verdict.PASS,
            ReasonCode.RISE_IN_TIME,
            ReasonCode.MAXIMUM_REACHED,
            ReasonCode.ZERO_DRIFT),
        Case.of(
            "clock",
            s -> s.clock = new Clock(1, 0.2, false),
            Verdict.PASS,
            ReasonCode.RISE_IN_TIME,
            ReasonCode.MAXIMUM_REACHED,
            ReasonCode.CLOCK_UNSTEADY),
        Case.of(
            "thin air",
            s -> {
              s.ambient = Optional.of(new AmbientPressure(75, 0.3, Origin.SENSOR));
              lowMaximum(s, 66);
            },
            Verdict.PASS,
            ReasonCode.RISE_IN_TIME,
            ReasonCode.MAXIMUM_REACHED,
            ReasonCode.ALTITUDE_ADJUSTED));
  }

  @ParameterizedTest
  @MethodSource("cases")
  void verdictAndReasons(Case one) {
    Grade grade = one.grade();

    assertThat(grade.reasons()).extracting(Reason::code).isEqualTo(one.reasons());
    assertThat(grade.verdict()).isEqualTo(one.verdict());
  }

  /** A reason that says only its own name helps nobody. */
  @ParameterizedTest
  @MethodSource("cases")
  void eachReasonIsASentence(Case one) {
    assertThat(one.grade().reasons())
        .extracting(Reason::text)
        .allMatch(text -> text.matches("[A-Z].{20,}[.?]") && !text.contains("  "));
  }

  /** No calibration record here, so none can be overdue; a sheet is always of a blocked inlet. */
  @Test
  void everyReasonOfTheListIsReached() {
    Set<ReasonCode> reached =
        cases().flatMap(c -> c.reasons().stream()).collect(Collectors.toSet());

    assertThat(reached)
        .isEqualTo(
            EnumSet.complementOf(
                EnumSet.of(
                    ReasonCode.CALIBRATION_OVERDUE,
                    ReasonCode.NOT_BLOCKED,
                    ReasonCode.UNCHECKED_LINE)));
  }

  @Test
  void aVacuumThatStillClimbsIsToBeHeldLongerBeforeAnySensorIsCalibrated() {
    Sheet sheet = Sheet.sound();
    lowMaximum(sheet, 81);
    assertThat(nearLimit(sheet)).contains("To tell takes U of");
    sheet.finalSlope = 0.5;
    assertThat(nearLimit(sheet))
        .contains("still climbing by 0.50 kPa/s", "hold until the vacuum stands still")
        .doesNotContain("calibrate");
  }

  private static String nearLimit(Sheet sheet) {
    return Grade.of(sheet.measurement(), Criteria.DEFAULT).reasons().get(0).text();
  }

  /** The codes that importers rely on, letter by letter. */
  @Test
  void codesAreThoseOfTheFormat() {
    assertThat(Arrays.stream(ReasonCode.values()).map(ReasonCode::code))
        .containsExactlyInAnyOrder(
            "rise-in-time",
            "rise-slow",
            "rise-not-reached",
            "maximum-reached",
            "maximum-low",
            "open-vacuum-high",
            "near-limit",
            "rise-faster-than-usual",
            "occlusion-slipped",
            "released-early",
            "gap-in-test",
            "range-clipped",
            "zero-drift",
            "calibration-overdue",
            "clock-unsteady",
            "sensor-fault",
            "altitude-adjusted",
            "not-blocked",
            "unchecked-line");
  }

  @Test
  void theWorstDecides() {
    assertThat(Verdict.PASS.worse(Verdict.INCONCLUSIVE)).isEqualTo(Verdict.INCONCLUSIVE);
    assertThat(Verdict.FAIL.worse(Verdict.INCONCLUSIVE)).isEqualTo(Verdict.FAIL);
    assertThat(Verdict.FAIL.worse(Verdict.INVALID)).isEqualTo(Verdict.INVALID);
    assertThat(Verdict.PASS.worse(Verdict.PASS)).isEqualTo(Verdict.PASS);
  }
}
